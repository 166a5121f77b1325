import { type CureProfile, cureCurve, milestoneAges } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { durationText } from '../../../parts/durationText.ts'
import { minutesOf, type Point } from './bandDrag.ts'

/** The drawing's own units; the picture scales with its card. */
export const box = { width: 760, height: 216, left: 44, right: 16, top: 14, bottom: 70 }

/** Under the curve, where the points of the first hours are taken hold of. */
export const rail = box.height - box.bottom + 14

export interface BandShape {
  /** Between the early and the late bound. */
  band: string
  likely: string
  marks: { sign: string; label: string; x: number; y: number; point: Point | null }[]
  /** Where each point of the curve is taken hold of. */
  grips: { point: Point; x: number; y: number }[]
  ticks: { label: string; x: number }[]
  levels: { label: string; y: number }[]
}

export interface BandAxis {
  /** What the hours at the left are told apart by, and where the axis ends. */
  unit: number
  endMin: number
}

/** The axis that suits a profile, with room behind its last point to move that on. */
export function axisFor({ firstPeriod, fullCure }: CureProfile): BandAxis {
  return { unit: firstPeriod.lateMin / 4, endMin: fullCure.lateMin * 1.3 }
}

/** Minutes to x and back: logarithmic, so that the first hours, in which most happens, have room beside the days. */
export function axisOf({ unit, endMin }: BandAxis) {
  const width = box.width - box.left - box.right
  const whole = Math.log1p(endMin / unit)
  return {
    x: (minutes: number) => box.left + (Math.log1p(minutes / unit) / whole) * width,
    /** The minutes at a share 0..1 of the width. */
    at: (share: number) => unit * Math.expm1(share * whole),
  }
}

/** The curve of a profile as paths and marks; null while its figures do not agree with each other. */
export function bandShape(profile: CureProfile, axis = axisFor(profile)): BandShape | null {
  if (!agrees(profile)) return null
  const curve = cureCurve(profile)
  const { x, at } = axisOf(axis)
  const floor = box.height - box.bottom
  const y = (degree: number) => floor - degree * (floor - box.top)
  const steps = 120
  const ages = Array.from({ length: steps + 1 }, (_, i) => at(i / steps))
  const point = (age: number, degree: number) => `${x(age).toFixed(1)} ${y(degree).toFixed(1)}`
  const along = (bound: 'early' | 'likely' | 'late') =>
    ages.map(age => point(age, curve.degreeAt(age)[bound]))
  const moments = milestoneAges(profile)
  const mark = (sign: string, label: string, age: number, point: Point | null = null) => ({
    sign,
    label,
    point,
    x: x(age),
    y: y(curve.degreeAt(age).likely),
  })
  const held = (point: Point) => ({ point, x: x(minutesOf(profile, point)), y: rail })
  const bound = (point: Point, degree: number) => ({ ...held(point), y: y(degree) })
  return {
    band: `M${along('early').join('L')}L${along('late').reverse().join('L')}Z`,
    likely: `M${along('likely').join('L')}`,
    marks: [
      mark(
        '▴',
        say('Safe to touch after {tackFree}', { tackFree: durationText(moments.tackFree) }),
        moments.tackFree,
        'tackFreeMin',
      ),
      ...(moments.topperOpens === null
        ? []
        : [
            mark(
              '◆',
              say('Topper after {topperOpens}', { topperOpens: durationText(moments.topperOpens) }),
              moments.topperOpens,
            ),
          ]),
      mark(
        '●',
        say('Earliest pick-up after {handoverSafe}', { handoverSafe: durationText(moments.handoverSafe) }),
        moments.handoverSafe,
        'handoverMin',
      ),
      mark(
        '○',
        say('Recommended pick-up after {handoverAdvised}', {
          handoverAdvised: durationText(moments.handoverAdvised),
        }),
        moments.handoverAdvised,
        'handoverAdvisedMin',
      ),
    ],
    grips: [
      held('tackFreeMin'),
      held('handoverMin'),
      held('handoverAdvisedMin'),
      bound('firstPeriod.earlyMin', profile.firstPeriod.degree),
      bound('firstPeriod.lateMin', profile.firstPeriod.degree),
      bound('fullCure.earlyMin', 1),
      bound('fullCure.lateMin', 1),
    ],
    ticks: apart(ticksOf(profile).map(age => ({ label: durationText(age), x: x(age) }))),
    levels: [0, profile.firstPeriod.degree, 1].map(degree => ({
      label: `${Math.round(degree * 100)} %`,
      y: y(degree),
    })),
  }
}

/** How far from each other the words of two ticks must stand; the last stand left of theirs. */
const leastApart = 72

/** Without those whose words would touch a later one's. */
function apart<T extends { x: number }>(ticks: readonly T[]): T[] {
  const kept: T[] = []
  for (const tick of ticks.toReversed()) {
    const next = kept.at(-1)
    if (!next || next.x - tick.x >= leastApart) kept.push(tick)
  }
  return kept.reverse()
}

function ticksOf({ firstPeriod, fullCure }: CureProfile): number[] {
  const half = Math.round(firstPeriod.lateMin / 2)
  const days = fullCure.earlyMin > 3 * firstPeriod.lateMin ? [2 * firstPeriod.lateMin] : []
  const marks = [
    0,
    Math.round(half / 3),
    half,
    firstPeriod.lateMin,
    ...days,
    fullCure.earlyMin,
    fullCure.lateMin,
  ]
  return [...new Set(marks)].filter((age, i, all) => i === 0 || age > all[i - 1]!)
}

/** What the curve needs of the figures: each later one after the one before it. */
function agrees({ firstPeriod, fullCure }: CureProfile): boolean {
  const rising = (a: number, b: number) => Number.isFinite(a) && Number.isFinite(b) && a > 0 && a <= b
  return (
    rising(firstPeriod.earlyMin, firstPeriod.lateMin) &&
    rising(fullCure.earlyMin, fullCure.lateMin) &&
    firstPeriod.earlyMin < fullCure.earlyMin &&
    firstPeriod.lateMin < fullCure.lateMin &&
    firstPeriod.degree > 0 &&
    firstPeriod.degree < 1
  )
}
