/**
 * The car as it is drawn: from above, its nose to the left, with its sides folded out. A picture 1000 wide and 560 high;
 * marks are kept in its coordinates, so that shapes may be redrawn but not moved about.
 */

import type { PanelName } from '../shop/index.ts'
import type { BodyShape } from './words.ts'

export const pictureSize = { width: 1000, height: 560 } as const

export interface DrawnPanel {
  panel: PanelName
  path: string
  /** Where a mark goes that the keyboard sets. */
  middle: { x: number; y: number }
}

export interface DrawnCar {
  panels: readonly DrawnPanel[]
  /** Windows and the like, which carry no paint. */
  glass: readonly string[]
  wheels: readonly { x: number; y: number }[]
}

/** Where along the car each part ends, and where its flanks meet. */
interface Lengths {
  bonnetEnd: number
  roofStart: number
  roofEnd: number
  bootStart: number
  doorsEnd: number
  /** How far the windows reach down the flank. */
  belt: number
}

const lengths: Readonly<Record<BodyShape, Lengths>> = {
  saloon: { bonnetEnd: 285, roofStart: 375, roofEnd: 615, bootStart: 705, doorsEnd: 655, belt: 46 },
  hatchback: { bonnetEnd: 268, roofStart: 355, roofEnd: 720, bootStart: 800, doorsEnd: 640, belt: 48 },
  estate: { bonnetEnd: 268, roofStart: 350, roofEnd: 800, bootStart: 850, doorsEnd: 630, belt: 46 },
  'off-roader': { bonnetEnd: 250, roofStart: 315, roofEnd: 815, bootStart: 855, doorsEnd: 640, belt: 38 },
}

const sill = 126
const wheels = [195, 775]

export function drawCar(shape: BodyShape): DrawnCar {
  const at = lengths[shape]
  const { bonnetEnd, roofStart, roofEnd, bootStart } = at
  const along = (from: number, to: number, narrow = 0): string =>
    `M${from} ${182 + narrow}L${to} 182L${to} 378L${from} ${378 - narrow}Z`
  const middle = (from: number, to: number) => ({ x: (from + to) / 2, y: 280 })
  return {
    panels: [
      { panel: 'Front bumper', path: 'M84 196Q34 202 26 280Q34 358 84 364Z', middle: { x: 58, y: 280 } },
      { panel: 'Bonnet', path: along(90, bonnetEnd, 12), middle: middle(90, bonnetEnd) },
      { panel: 'Roof', path: along(roofStart, roofEnd), middle: middle(roofStart, roofEnd) },
      {
        panel: 'Boot lid',
        path: `M${bootStart} 182L904 192L904 368L${bootStart} 378Z`,
        middle: middle(bootStart, 904),
      },
      {
        panel: 'Rear bumper',
        path: 'M910 194Q962 202 970 280Q962 358 910 366Z',
        middle: { x: 938, y: 280 },
      },
      ...flank(at, 'Right', down => 160 - down),
      ...flank(at, 'Left', down => 400 + down),
    ],
    glass: [
      `M${bonnetEnd + 6} 190L${roofStart - 6} 200L${roofStart - 6} 360L${bonnetEnd + 6} 370Z`,
      `M${roofEnd + 6} 200L${bootStart - 6} 190L${bootStart - 6} 370L${roofEnd + 6} 360Z`,
      ...[(down: number) => 160 - down, (down: number) => 400 + down].map(
        y =>
          `M${bonnetEnd + 24} ${y(at.belt - 6)}L${roofStart + 4} ${y(4)}L${roofEnd - 4} ${y(4)}L${bootStart - 10} ${y(at.belt - 6)}Z`,
      ),
    ],
    wheels: wheels.flatMap(x => [
      { x, y: 160 - sill },
      { x, y: 400 + sill },
    ]),
  }
}

/** One side: wing, doors and quarter; `y` turns a distance from the roof into a place in the picture. */
function flank(at: Lengths, side: 'Left' | 'Right', y: (down: number) => number): DrawnPanel[] {
  const { bonnetEnd, doorsEnd, belt } = at
  const hinge = bonnetEnd + 14
  const panel = (name: 'wing' | 'doors' | 'quarter', path: string, x: number): DrawnPanel => ({
    panel: `${side} ${name}`,
    path,
    middle: { x, y: y(belt + 30) },
  })
  return [
    panel(
      'wing',
      `M70 ${y(78)}Q90 ${y(belt + 8)} ${hinge - 6} ${y(belt)}L${hinge - 6} ${y(sill)}L84 ${y(sill)}Q66 ${y(104)} 70 ${y(78)}Z`,
      (90 + hinge) / 2,
    ),
    panel(
      'doors',
      `M${hinge} ${y(belt)}L${doorsEnd} ${y(belt)}L${doorsEnd} ${y(sill)}L${hinge} ${y(sill)}Z`,
      (hinge + doorsEnd) / 2,
    ),
    panel(
      'quarter',
      `M${doorsEnd + 6} ${y(belt)}L880 ${y(belt + 2)}Q932 ${y(belt + 10)} 934 ${y(84)}Q932 ${y(112)} 912 ${y(sill)}L${doorsEnd + 6} ${y(sill)}Z`,
      (doorsEnd + 930) / 2,
    ),
  ]
}
