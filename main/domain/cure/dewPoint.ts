/** Dew point by the Magnus formula, over liquid water. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Saturation pressure is `hPa × exp(a t / (b + t))` at `t` degrees Celsius. */
export interface MagnusConstants {
  readonly hPa: number
  readonly a: number
  readonly bC: number
}

/**
 * Sonntag 1990 (Zeitschrift für Meteorologie 40(5), 340-344), the constants of WMO-No. 8, part I, chapter 4, annex
 * 4.B; within about 0.1 °C of the exact saturation line from -45 to 60 °C.
 */
export const sonntag1990: MagnusConstants = { hPa: 6.112, a: 17.62, bC: 243.12 }

/** Water vapour pressure at saturation, in hPa. */
export function saturationHpa(celsius: number, { hPa, a, bC } = sonntag1990): number {
  return hPa * Math.exp((a * celsius) / (bC + celsius))
}

/**
 * The temperature at which air of `airC` and `humidityPercent` begins to wet a surface.
 * @throws Refusal when the humidity is not above 0 and at most 100.
 */
export function dewPointC(airC: number, humidityPercent: number, { a, bC } = sonntag1990): number {
  if (!(humidityPercent > 0 && humidityPercent <= 100))
    refuse(
      'humidity-bad',
      { humidityPercent },
      say('{humidityPercent} % is not a relative humidity; it must be above 0 and at most 100.', {
        humidityPercent,
      }),
    )
  const g = Math.log(humidityPercent / 100) + (a * airC) / (bC + airC)
  return (bC * g) / (a - g)
}

/** The relative humidity of air at `airC` whose dew point is known, for loggers that record that instead. */
export function humidityPercentOf(airC: number, dewC: number): number {
  return (100 * saturationHpa(dewC)) / saturationHpa(airC)
}

/** A panel must be at least so much above the dew point (ISO 8502-4, ISO 12944-7; rule from memory). */
export const leastMarginC = 3

/** The coldest a panel may be in this air to be coated. */
export function leastPanelC(airC: number, humidityPercent: number): number {
  return dewPointC(airC, humidityPercent) + leastMarginC
}
