import {
  type CureCurve,
  type CureProfile,
  cureCurve,
  milestoneAges,
} from '../../../../main/domain/cure/index.ts'
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

/** Minutes to x: the first period, in which most happens, takes the left half. */
export function axisOf(profile: CureProfile): (minutes: number) => number {
  const first = profile.firstPeriod.lateMin * 1.15
  const last = profile.fullCure.lateMin
  const width = box.width - box.left - box.right
  return minutes =>
    box.left +
    (minutes <= first
      ? (minutes / first) * width * 0.56
      : width * 0.56 + ((minutes - first) / (last - first)) * width * 0.44)
}

/** The curve of a profile as paths and marks; null while its figures do not agree with each other. */
export function bandShape(profile: CureProfile): BandShape | null {
  if (!agrees(profile)) return null
  const curve: CureCurve = cureCurve(profile)
  const x = axisOf(profile)
  const floor = box.height - box.bottom
  const y = (degree: number) => floor - degree * (floor - box.top)
  const steps = 120
  const ages = Array.from({ length: steps + 1 }, (_, i) => ageAtX(profile, i / steps))
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
    marks: [
      mark('▴', `may be moved after ${durationText(moments.tackFree)}`, moments.tackFree),
      mark('◆', `topper from ${durationText(moments.topperOpens)}`, moments.topperOpens),
      mark('●', `may leave from ${durationText(moments.handoverSafe)}`, moments.handoverSafe),
      mark('○', `advised from ${durationText(moments.handoverAdvised)}`, moments.handoverAdvised),
    ],
    ticks: ticksOf(profile).map(age => ({ label: durationText(age), x: x(age) })),
    levels: [0, profile.firstPeriod.degree, 1].map(degree => ({
      label: `${Math.round(degree * 100)} %`,
      y: y(degree),
    })),
  }
}

/** The age at a share 0..1 of the drawing's width, so that the points lie evenly. */
function ageAtX(profile: CureProfile, share: number): number {
  const first = profile.firstPeriod.lateMin * 1.15
  const last = profile.fullCure.lateMin
  return share <= 0.56 ? (share / 0.56) * first : first + ((share - 0.56) / 0.44) * (last - first)
}

function ticksOf({ firstPeriod, fullCure }: CureProfile): number[] {
  const half = Math.round(firstPeriod.lateMin / 2)
  const marks = [0, half, firstPeriod.lateMin, fullCure.earlyMin, fullCure.lateMin]
  return [...new Set(marks)].filter((age, i, all) => i === 0 || age > all[i - 1]!)
}

/** What the curve needs of the figures: each later one after the one before it. */
function agrees({ firstPeriod, fullCure }: CureProfile): boolean {
  const rising = (a: number, b: number) => Number.isFinite(a) && Number.isFinite(b) && a > 0 && a <= b
  return (
    rising(firstPeriod.earlyMin, firstPeriod.lateMin) &&
    rising(fullCure.earlyMin, fullCure.lateMin) &&
    firstPeriod.earlyMin < fullCure.earlyMin &&
    firstPeriod.lateMin * 1.15 < fullCure.lateMin &&
    firstPeriod.degree > 0 &&
    firstPeriod.degree < 1
  )
}
