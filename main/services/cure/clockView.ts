import type { CureClockView } from '../views.ts'
import type { LaidCoat } from './laidCoat.ts'

/** Points of the past; with them a night's cold shows as the bend it is. */
const pastPoints = 24

/** A running clock as the screens are given it. */
export function clockView(laid: LaidCoat, safeAt: number, advisedAt: number): CureClockView {
  const { clock, profile, nowAt, usualC, usualFrom, heated } = laid
  const from = clock.coatEndAt
  const knownUntilAt = Math.max(from, nowAt)
  const past = Array.from({ length: pastPoints }, (_, i) => from + ((knownUntilAt - from) * i) / pastPoints)
  // A heated cure still to run bends the line ahead, so the road to the handover has points of its own.
  const ahead = [0, 1 / 4, 1 / 2, 3 / 4, 1].map(
    share => knownUntilAt + Math.max(60, advisedAt - knownUntilAt) * share,
  )
  const ats = [...new Set([...past, ...ahead].map(Math.round))]
  return {
    knownUntilAt,
    ageMin: clock.ageAt(knownUntilAt),
    untilNow: clock.partsUntil(knownUntilAt),
    untilSafe: clock.partsUntil(safeAt),
    ages: ats.map(at => [at, Math.round(clock.ageAt(at) * 100) / 100]),
    usualC,
    usualFrom,
    heated,
    stalled: clock.reachedAt(profile.fullCure.lateMin) === null,
  }
}
