/** The air a fresh coat has cured in: humidity and dew point against its profile. They are told, and move no time. */
import { type BayConditions, type CoatWarning, coatConditions } from './conditions.ts'
import type { CureProfile } from './profile.ts'

/** A reading of the bay with its humidity. */
export interface AirReading extends BayConditions {
  readonly at: number
}

/** One rule that readings of the early cure did not meet: from the first to the last of them, and the worst value. */
export interface EarlyFlag extends Pick<CoatWarning, 'limit' | 'source'> {
  readonly code: 'air-dry' | 'air-damp' | 'dew-margin'
  readonly fromAt: number
  readonly toAt: number
  readonly worst: number
}

/** Until when a coat is in its early cure: the first period of its profile, at its earliest, from its end. */
export function earlyCureUntil({ firstPeriod }: CureProfile, coatEndAt: number): number {
  return coatEndAt + firstPeriod.earlyMin
}

/**
 * What of the readings, in order of time, was outside the profile's humidity range or under 3 °C above the dew point. A
 * panel that was not measured is held against nothing.
 * @throws Refusal when a humidity is not above 0 and at most 100.
 */
export function earlyFlags(profile: CureProfile, readings: readonly AirReading[]): EarlyFlag[] {
  const flags = new Map<EarlyFlag['code'], EarlyFlag>()
  for (const reading of readings)
    for (const { code, value, limit, source } of coatConditions(profile, reading).warnings) {
      if ((code !== 'air-dry' && code !== 'air-damp' && code !== 'dew-margin') || value === null) continue
      const before = flags.get(code)
      const worse = code === 'air-damp' ? Math.max : Math.min
      flags.set(code, {
        code,
        limit,
        source,
        fromAt: before?.fromAt ?? reading.at,
        toAt: reading.at,
        worst: before ? worse(before.worst, value) : value,
      })
    }
  return [...flags.values()]
}
