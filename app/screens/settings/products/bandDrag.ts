import {
  advisedByPracticeMin,
  type CureProfile,
  leastByPracticeMin,
} from '../../../../main/domain/cure/index.ts'

/** The figures of a profile that are points of its curve, in the order the keyboard goes through them. */
export const points = [
  'tackFreeMin',
  'handoverMin',
  'handoverAdvisedMin',
  'firstPeriod.earlyMin',
  'firstPeriod.lateMin',
  'fullCure.earlyMin',
  'fullCure.lateMin',
] as const
export type Point = (typeof points)[number]

/** A year: no profile takes more. */
const longestMin = 365 * 24 * 60

export function minutesOf(profile: CureProfile, point: Point): number {
  const [figure, bound] = point.split('.') as ['firstPeriod' | 'fullCure', 'earlyMin' | 'lateMin' | undefined]
  return bound
    ? profile[figure][bound]
    : profile[point as 'tackFreeMin' | 'handoverMin' | 'handoverAdvisedMin']
}

/** The least and the most a point may be moved to: after the one it follows, before the one that follows it. */
export function reachOf(profile: CureProfile, point: Point): { least: number; most: number } {
  const { tackFreeMin, handoverMin, handoverAdvisedMin, firstPeriod, fullCure } = profile
  switch (point) {
    case 'tackFreeMin':
      return { least: 0, most: handoverMin }
    case 'handoverMin':
      return { least: Math.max(tackFreeMin, leastByPracticeMin), most: handoverAdvisedMin }
    case 'handoverAdvisedMin':
      return { least: Math.max(handoverMin, advisedByPracticeMin.from), most: fullCure.earlyMin }
    case 'firstPeriod.earlyMin':
      return { least: 1, most: Math.min(firstPeriod.lateMin, fullCure.earlyMin - 1) }
    case 'firstPeriod.lateMin':
      return { least: firstPeriod.earlyMin, most: fullCure.lateMin - 1 }
    case 'fullCure.earlyMin':
      return { least: Math.max(handoverAdvisedMin, firstPeriod.earlyMin + 1), most: fullCure.lateMin }
    case 'fullCure.lateMin':
      return { least: Math.max(fullCure.earlyMin, firstPeriod.lateMin + 1), most: longestMin }
  }
}

/** What times of this length are told apart by: nobody means 8 d 3 h 25. */
function stepOf(minutes: number): number {
  if (minutes < 60) return 5
  if (minutes < 6 * 60) return 15
  if (minutes < 24 * 60) return 30
  if (minutes < 4 * 1440) return 120
  return minutes < 28 * 1440 ? 720 : 1440
}

/** The time a hand means that lets go here. */
export function sensible(minutes: number): number {
  const step = stepOf(minutes)
  return Math.round(minutes / step) * step
}

/** So many sensible times on, or back. */
export function stepped(minutes: number, by: number): number {
  if (!Number.isFinite(by)) return by
  let at = minutes
  for (let i = 0; i < Math.abs(by); i++) {
    const step = stepOf(by < 0 ? at - 1 : at)
    at = by < 0 ? (Math.ceil(at / step) - 1) * step : (Math.floor(at / step) + 1) * step
  }
  return at
}

/**
 * The profile with a point at these minutes, as far as it may go. What was moved by hand is not the data sheet's figure
 * any more, and says so until somebody marks it otherwise.
 */
export function movedPoint(profile: CureProfile, point: Point, minutes: number): CureProfile {
  const { least, most } = reachOf(profile, point)
  const at = Math.min(most, Math.max(least, minutes))
  if (least > most || at === minutesOf(profile, point)) return profile
  const [figure, bound] = point.split('.') as [keyof CureProfile['sources'], string | undefined]
  const given = bound ? { ...profile[figure as 'firstPeriod' | 'fullCure'], [bound]: at } : at
  return { ...profile, [figure]: given, sources: { ...profile.sources, [figure]: 'common practice' } }
}
