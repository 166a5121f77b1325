/** How a coat goes on curing once its car has left: by the weather outside, not by the bay's. */
import type { CureProfile } from './profile.ts'
import { neverFaster, rateOf } from './rate.ts'

/**
 * The first minute at which a coat reaches `ageMin`, `leftAgeMin` old when its car leaves at `leavesAt` into a steady
 * `outsideC`; the minute it leaves where it is that old by then, null where it is too cold ever to get there. Cold
 * lengthens; heat shortens nothing.
 */
export function reachedOutside(
  profile: CureProfile,
  { leavesAt, leftAgeMin, outsideC }: { leavesAt: number; leftAgeMin: number; outsideC: number },
  ageMin: number,
): number | null {
  const left = ageMin - leftAgeMin
  if (left <= 0) return leavesAt
  const rate = neverFaster(rateOf(profile.rate, profile.referenceC), profile.referenceC).of(outsideC)
  return rate === 0 ? null : Math.ceil(leavesAt + left / rate - 1e-6)
}

/** The usual temperature outside by season, named by its months so that it holds on either side of the equator. */
export const outsideSeasons = ['decFeb', 'marMay', 'junAug', 'sepNov'] as const
export type OutsideUsual = Readonly<Record<(typeof outsideSeasons)[number], number>>

/** The usual temperature in a month, 1 to 12. */
export function usualOutside(usual: OutsideUsual, month: number): number {
  return usual[outsideSeasons[Math.floor((month % 12) / 3)]!]
}
