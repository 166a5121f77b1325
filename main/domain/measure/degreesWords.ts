import { decimalNow } from '../language/index.ts'
import { differenceFahrenheitOf } from './temperature.ts'

/** Which units the shop's screens and papers show. Storage is always metric. */
export type UnitSystem = 'metric' | 'us'

const tenths = (value: number) => decimalNow(Math.round(value * 10) / 10)

/** A temperature in the shop's measure, to a tenth: `12.5 °C`, `54.5 °F`. What no thermometer can show is said as it is. */
export function degreesWords(celsius: number, units: UnitSystem): string {
  return units === 'us' ? `${tenths(differenceFahrenheitOf(celsius) + 32)} °F` : `${tenths(celsius)} °C`
}

/** A difference of temperatures in the shop's measure, to a tenth: 3 °C are `5.4 °F`. */
export function marginWords(celsius: number, units: UnitSystem): string {
  return units === 'us' ? `${tenths(differenceFahrenheitOf(celsius))} °F` : `${tenths(celsius)} °C`
}
