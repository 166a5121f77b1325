import { type CureProfile, cureCurve, milestoneAges } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { durationText } from '../../../parts/durationText.ts'

/** The drawing's own units; the picture scales with its card. */
export const box = { width: 760, height: 190, left: 44, right: 12, top: 14, bottom: 44 }

export interface BandShape {
  /** Between the early and the late bound. */
  band: string
  likely: string
  marks: { sign: string; label: string; x: number; y: number }[]
  ticks: { label: string; x: number }[]
  levels: { label: string; y: number }[]
}

/** Minutes to x and back: logarithmic, so that the first hours, in which most happens, have room beside the days. */
export function axisOf({ firstPeriod, fullCure }: CureProfile) {
  const unit = firstPeriod.lateMin / 4
  const width = box.width - box.left - box.right
  const whole = Math.log1p(fullCure.lateMin / unit)
  return {
    x: (minutes: number) => box.left + (Math.log1p(minutes / unit) / whole) * width,
    /** The minutes at a share 0..1 of the width. */
    at: (share: number) => unit * Math.expm1(share * whole),
  }
}

/** The curve of a profile as paths and marks; null while its figures do not agree with each other. */
export function bandShape(profile: CureProfile): BandShape | null {
  if (!agrees(profile)) return null
  const curve = cureCurve(profile)
  const { x, at } = axisOf(profile)
  const floor = box.height - box.bottom
  const y = (degree: number) => floor - degree * (floor - box.top)
  const steps = 120
  const ages = Array.from({ length: steps + 1 }, (_, i) => at(i / steps))
  const point = (age: number, degree: number) => `${x(age).toFixed(1)} ${y(degree).toFixed(1)}`
  const along = (bound: 'early' | 'likely' | 'late') =>
    ages.map(age => point(age, curve.degreeAt(age)[bound]))
  const moments = milestoneAges(profile)
  const mark = (sign: string, label: string, age: number) => ({
    sign,
    label,
    x: x(age),
    y: y(curve.degreeAt(age).likely),
  })
  return {
    band: `M${along('early').join('L')}L${along('late').reverse().join('L')}Z`,
    likely: `M${along('likely').join('L')}`,
    marks: stacked([
      mark(
        '▴',
        say('may be moved after {tackFree}', { tackFree: durationText(moments.tackFree) }),
        moments.tackFree,
      ),
      ...(moments.topperOpens === null
        ? []
        : [
            mark(
              '◆',
              say('topper from {topperOpens}', { topperOpens: durationText(moments.topperOpens) }),
              moments.topperOpens,
            ),
          ]),
      mark(
        '●',
        say('may leave from {handoverSafe}', { handoverSafe: durationText(moments.handoverSafe) }),
        moments.handoverSafe,
      ),
      mark(
        '○',
        say('advised from {handoverAdvised}', { handoverAdvised: durationText(moments.handoverAdvised) }),
        moments.handoverAdvised,
      ),
    ]),
    ticks: apart(ticksOf(profile).map(age => ({ label: durationText(age), x: x(age) }))),
    levels: [0, profile.firstPeriod.degree, 1].map(degree => ({
      label: `${Math.round(degree * 100)} %`,
      y: y(degree),
    })),
  }
}

/** Marks of one moment above each other instead of over each other. */
function stacked<T extends { x: number; y: number }>(marks: T[]): T[] {
  return marks.map((mark, i) => {
    const under = marks.slice(0, i).filter(other => Math.abs(other.x - mark.x) < 12).length
    return { ...mark, y: mark.y - under * 15 }
  })
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
