/** Whether the air and the panel are as the data sheet wants them when a coat is laid. */
import { dewPointC, leastMarginC } from './dewPoint.ts'
import type { CureProfile, FigureSource } from './profile.ts'

export interface BayConditions {
  readonly airC: number
  readonly humidityPercent: number
  /** Null: not measured. */
  readonly panelC: number | null
}

export type WarningCode =
  | 'air-cold'
  | 'air-hot'
  | 'panel-cold'
  | 'panel-hot'
  | 'air-dry'
  | 'air-damp'
  | 'dew-margin'
  | 'panel-unmeasured'

/** One rule a coat step does not meet; laying the coat all the same wants a reason, which is kept. */
export interface CoatWarning {
  readonly code: WarningCode
  readonly value: number | null
  /** The figure of the rule, in the value's unit. */
  readonly limit: number
  readonly source: FigureSource | 'ISO 8502-4'
}

export interface CoatConditions {
  readonly dewC: number
  /** Panel above dew point; null when the panel was not measured. */
  readonly marginC: number | null
  /** Empty: every rule was met. That is all it says; the data sheet decides. */
  readonly warnings: readonly CoatWarning[]
}

/** Rounding noise: a margin of 3 °C typed in must not fail for its last bit. */
const noiseC = 1e-9

/**
 * The dew point, the panel's margin over it, and every rule of the profile and of ISO 8502-4 that is not met.
 * @throws Refusal when the humidity is not above 0 and at most 100.
 */
export function coatConditions(profile: CureProfile, conditions: BayConditions): CoatConditions {
  const { airC, humidityPercent, panelC } = conditions
  const { temperature, humidity, sources } = profile
  const dewC = dewPointC(airC, humidityPercent)
  const marginC = panelC === null ? null : panelC - dewC
  const warnings: CoatWarning[] = []
  const warn = (
    failed: boolean,
    code: WarningCode,
    value: number | null,
    limit: number,
    source: CoatWarning['source'],
  ) => {
    if (failed) warnings.push({ code, value, limit, source })
  }
  warn(airC < temperature.minC, 'air-cold', airC, temperature.minC, sources.temperature)
  warn(airC > temperature.maxC, 'air-hot', airC, temperature.maxC, sources.temperature)
  if (panelC !== null) {
    warn(panelC < temperature.minC, 'panel-cold', panelC, temperature.minC, sources.temperature)
    warn(panelC > temperature.maxC, 'panel-hot', panelC, temperature.maxC, sources.temperature)
  }
  warn(
    humidityPercent < humidity.minPercent,
    'air-dry',
    humidityPercent,
    humidity.minPercent,
    sources.humidity,
  )
  warn(
    humidityPercent > humidity.maxPercent,
    'air-damp',
    humidityPercent,
    humidity.maxPercent,
    sources.humidity,
  )
  if (marginC === null) warn(true, 'panel-unmeasured', null, leastMarginC, 'ISO 8502-4')
  else warn(marginC < leastMarginC - noiseC, 'dew-margin', marginC, leastMarginC, 'ISO 8502-4')
  return { dewC, marginC, warnings }
}
