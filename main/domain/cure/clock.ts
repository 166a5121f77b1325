/**
 * The cure clock: how old a coat is, in minutes at the reference temperature, and when it will be so old. It is for
 * what opens: cold lengthens every time, heat shortens one only by a data-sheet row. What closes has the clocks of
 * `windowClock.ts`.
 */
import { firstIndex } from '../calendar/index.ts'
import { type HeatCredit, type Heating, heatCredit } from './heating.ts'
import type { CureProfile } from './profile.ts'
import { ageOver, minutesTo, neverFaster, type Rate, rateOf } from './rate.ts'
import { type Stretches, stretchesFrom } from './stretches.ts'
import { type BayTemperatures, temperatureStretches } from './temperatures.ts'

/** Real minutes since the coat was finished, by what is known of their temperature. */
export interface Parts {
  readonly measuredMin: number
  readonly assumedMin: number
  readonly projectedMin: number
}

export interface CureClock {
  readonly coatEndAt: number
  /** The cure age at a minute; 0 before the coat was finished. Never falls. */
  ageAt(at: number): number
  /** The (fractional) minute at which an age is reached; null where it never will at the usual temperature. */
  reachedAt(ageMin: number): number | null
  /** How the time from the end of the coat to `at` divides. */
  partsUntil(at: number): Parts
}

/** The clock of a coat finished at `coatEndAt` in a bay with these temperatures. */
export function cureClock(
  profile: CureProfile,
  coatEndAt: number,
  temperatures: BayTemperatures,
  heatings: readonly Heating[] = [],
): CureClock {
  const rate = neverFaster(rateOf(profile.rate, profile.referenceC), profile.referenceC)
  const credit = heatCredit(profile, coatEndAt, heatings)
  const stretches = temperatureStretches(coatEndAt, temperatures)
  if (!credit) return clockOver(stretches, rate)
  return clockOver(heated(stretches, credit, profile.referenceC), rate, credit)
}

/** The stretches with the heated one at the reference temperature, where the coat ages as the clock does. */
export function heated(stretches: Stretches, credit: HeatCredit, referenceC: number): Stretches {
  const cut = stretchesFrom(stretches.fromAt, stretches.count() + 2)
  for (let i = 0; i < stretches.count(); i++)
    for (const mark of [credit.from, credit.to, stretches.to(i)]) {
      const from = cut.endAt()
      const to = Math.min(mark, stretches.to(i))
      const hot = credit.from <= from && to <= credit.to
      const celsiusAt = (at: number) => (hot ? referenceC : stretches.celsiusAt(i, at))
      cut.add(to, celsiusAt(from), celsiusAt(to), stretches.part(i))
    }
  return cut
}

/**
 * A clock over any temperatures; the last stretch may be endless. Sums up to each stretch are kept, so that a
 * question costs a search by halving however long the log is.
 */
export function clockOver(stretches: Stretches, rate: Rate, credit: HeatCredit | null = null): CureClock {
  const n = stretches.count()
  const ageBefore = new Float64Array(n)
  const ageAfter = new Float64Array(n)
  const measuredBefore = new Float64Array(n)
  const assumedBefore = new Float64Array(n)
  let age = 0
  let measured = 0
  let assumed = 0
  for (let i = 0; i < n; i++) {
    if (credit && credit.to === stretches.from(i)) age += credit.gainMin
    ageBefore[i] = age
    measuredBefore[i] = measured
    assumedBefore[i] = assumed
    const minutes = stretches.to(i) - stretches.from(i)
    age += ageOver(rate, minutes, stretches.fromC(i), stretches.toC(i))
    ageAfter[i] = age
    const part = stretches.part(i)
    if (part === 'measured') measured += minutes
    else if (part === 'assumed') assumed += minutes
  }

  const coatEndAt = stretches.fromAt
  /** The stretch a minute lies in. */
  const indexAt = (at: number) => firstIndex(n - 1, i => stretches.to(i) > at)

  return {
    coatEndAt,
    ageAt: at => {
      if (at <= coatEndAt) return 0
      const i = indexAt(at)
      const until = Math.min(at, stretches.to(i))
      const minutes = until - stretches.from(i)
      return ageBefore[i]! + ageOver(rate, minutes, stretches.fromC(i), stretches.celsiusAt(i, until))
    },
    reachedAt: ageMin => {
      if (ageMin <= 0) return coatEndAt
      const i = firstIndex(n, index => ageAfter[index]! >= ageMin)
      if (i === n) return null
      const from = stretches.from(i)
      const to = stretches.to(i)
      const wanted = ageMin - ageBefore[i]!
      if (wanted <= 0) return from
      return Math.min(to, from + minutesTo(rate, wanted, to - from, stretches.fromC(i), stretches.toC(i)))
    },
    partsUntil: at => {
      const i = indexAt(at)
      const part = stretches.part(i)
      const here = Math.max(0, at - stretches.from(i))
      const measuredMin = measuredBefore[i]! + (part === 'measured' ? here : 0)
      const assumedMin = assumedBefore[i]! + (part === 'assumed' ? here : 0)
      const projectedMin = Math.max(0, at - coatEndAt) - measuredMin - assumedMin
      return { measuredMin, assumedMin, projectedMin }
    },
  }
}
