import type { Parts } from './clock.ts'
import { coatWindow, type LaidCoat } from './laidCoat.ts'
import { type MilestoneName, milestoneAges, momentNames } from './milestones.ts'

/** A milestone on the clock: the first whole minute at which it is reached, and how well its time is known. */
export interface Reached {
  readonly at: number
  readonly parts: Parts
}
/** Null: the profile has no such moment, or the bay is too cold ever to reach it. */
export type ClockMilestones = { readonly [Name in MilestoneName]: Reached | null }

/** Rounding noise of the sums, in minutes; without it a milestone due on a whole minute might show the next one. */
const noiseMin = 1e-6

/**
 * When each milestone of a laid coat is reached. Fractions round to the safe side: what opens never a minute too early,
 * what closes never too late. `nextMin`: how long what goes over it takes; with 0, which is the strictest, the windows
 * hold whatever it is for the first panels, and end when the first panel's does.
 */
export function clockMilestones(coat: LaidCoat, nextMin = 0): ClockMilestones {
  const { profile, clock } = coat
  const ages = milestoneAges(profile)
  const reached = (at: number | null | undefined) => (at == null ? null : { at, parts: clock.partsUntil(at) })
  const moments = momentNames.map(name => {
    const age = ages[name]
    const exactAt = age === null ? null : clock.reachedAt(age)
    return [name, exactAt === null ? null : reached(Math.ceil(exactAt - noiseMin))]
  })
  const recoat = coatWindow(coat, 'recoat', nextMin)
  const topper = coatWindow(coat, 'topper', nextMin)
  return {
    ...(Object.fromEntries(moments) as ClockMilestones),
    recoatOpens: reached(recoat?.opensAt),
    recoatCloses: reached(recoat?.closesAt),
    topperOpens: reached(topper?.opensAt),
    topperCloses: reached(topper?.closesAt),
  }
}
