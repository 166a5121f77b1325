/** Heated cure: a lamp or a heated bay that a data-sheet row says more of than the clock does. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import type { CureProfile } from './profile.ts'

/** One session in which every coated panel was kept at `panelC` or hotter. */
export interface Heating {
  readonly fromAt: number
  readonly toAt: number
  readonly panelC: number
}

/** From `from` to `to` the coat aged as the clock does; at `to` it gained `gainMin` more. */
export interface HeatCredit {
  readonly from: number
  readonly to: number
  readonly gainMin: number
}

/**
 * What the data sheet gives for the sessions: the first session that meets a row counts, with the row that gives
 * most, and its gain comes when the row's minutes are full, not before. A session too short or too cool for every row,
 * or a further one, counts nothing beyond the clock: the sheet does not say that rows add up.
 * @throws Refusal when a session ends before it begins.
 */
export function heatCredit(
  profile: CureProfile,
  coatEndAt: number,
  heatings: readonly Heating[],
): HeatCredit | null {
  heatings.forEach((heating, i) => {
    if (heating.fromAt >= heating.toAt)
      refuse(
        'heating-backwards',
        { [`heatings.${i}.toAt`]: heating.toAt },
        say('The heating ends before it begins; exchange the two times.'),
      )
  })
  for (const heating of [...heatings].sort((a, b) => a.fromAt - b.fromAt)) {
    const from = Math.max(heating.fromAt, coatEndAt)
    const rows = profile.forcedCure.filter(
      row => heating.panelC >= row.panelC && heating.toAt - from >= row.minutes,
    )
    const best = rows.sort((a, b) => b.standsForMin - b.minutes - (a.standsForMin - a.minutes))[0]
    if (best) return { from, to: from + best.minutes, gainMin: best.standsForMin - best.minutes }
  }
  return null
}
