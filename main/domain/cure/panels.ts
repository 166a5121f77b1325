/**
 * A window holds for every panel, the first and the last. Layers go round the car in the same order, so with layers of
 * d1 and d2 minutes and a wait of w between them, a panel waits w + d1 where the work begins and w + d2 where it ends,
 * counted from the end of its own first layer to the beginning of its own second.
 */
import type { Laying, WindowClock } from './windowClock.ts'

/**
 * How far from its place in the order a panel's second turn may begin, as shares of the second layer. `early`: a panel
 * is worked on for a while, so its turn begins that much before the place it ends at. `late`: it was passed over.
 */
export interface PanelOrder {
  readonly early: number
  readonly late: number
}

/** The largest panel takes an eighth of a layer, and none is passed over. Common practice, no source. */
export const usualOrder: PanelOrder = { early: 1 / 8, late: 0 }

/** The figures of a window: minutes from a panel's end to the same panel's next layer; null: it never closes. */
export interface WindowFigures {
  readonly minMin: number
  readonly maxMin: number | null
}

/**
 * The least and the most minutes between the end of a layer of `firstMin` and the start of the next, of `nextMin`, with
 * which every panel keeps the window; `most` below `least`: none does.
 */
export function waitBetween(
  { minMin, maxMin }: WindowFigures,
  firstMin: number,
  nextMin: number,
  { early, late }: PanelOrder = usualOrder,
): { least: number; most: number | null } {
  const shortest = (1 - early) * Math.min(firstMin, nextMin)
  const longest = Math.max(firstMin + late * nextMin, nextMin + late * firstMin)
  return {
    least: Math.max(0, Math.ceil(minMin - shortest - noiseMin)),
    most: maxMin === null ? null : Math.floor(maxMin - longest + noiseMin),
  }
}

export interface CoatWindow {
  /** The first minute at which the next layer may be begun; null: in this cold it never opens. */
  readonly opensAt: number | null
  /** The last one; null: it never closes. */
  readonly closesAt: number | null
}

const noiseMin = 1e-6
/** Places round the car that are looked at, the first and the last panel among them. */
const places = Array.from({ length: 9 }, (_, i) => i / 8)

/** When a next layer of `nextMin` may be begun over one that is laid, by its running clocks. */
export function windowOver(
  clock: WindowClock,
  { minMin, maxMin }: WindowFigures,
  { fromAt, toAt }: Laying,
  nextMin: number,
  { early, late }: PanelOrder = usualOrder,
): CoatWindow {
  let opensAt: number | null = toAt
  let closesAt: number | null = null
  for (const place of places) {
    const panelAt = fromAt + place * (toAt - fromAt)
    const ripeAt = clock.opens.reachedAt(clock.opens.ageAt(panelAt) + minMin)
    const turn = nextMin * Math.max(0, place - early)
    if (ripeAt === null) opensAt = null
    else if (opensAt !== null) opensAt = Math.max(opensAt, Math.ceil(ripeAt - turn - noiseMin))
    if (maxMin === null) continue
    const overAt = clock.closes.reachedAt(clock.closes.ageAt(panelAt) + maxMin)
    if (overAt === null) continue
    const lastAt = Math.floor(overAt - nextMin * Math.min(1, place + late) + noiseMin)
    closesAt = closesAt === null ? lastAt : Math.min(closesAt, lastAt)
  }
  return { opensAt, closesAt }
}
