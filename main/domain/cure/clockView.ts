import type { LaidCoat } from './laidCoat.ts'

export interface CureParts {
  measuredMin: number
  assumedMin: number
  projectedMin: number
}

export interface CureClockView {
  /** Up to here it knows the temperatures; from here it projects them. */
  knownUntilAt: number
  /** Minutes of cure at the profile's reference temperature, reached by then. */
  ageMin: number
  untilNow: CureParts
  /** Of the time from the coat to the earliest handover. */
  untilSafe: CureParts
  /** The cure age over time, as points to be joined by straight lines; the last two go on for ever. */
  ages: [at: number, ageMin: number][]
  /** The temperature projected from now on, and who says so. */
  usualC: number
  usualFrom: 'set' | 'last week' | 'profile'
  /** A recorded heated cure counts, by a row of the data sheet. */
  heated: boolean
  /** In this cold a moment below is never reached; it is then given as years away. */
  stalled: boolean
}

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
