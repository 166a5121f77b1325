import { fahrenheitOf } from '../../domain/measure/index.ts'

const tenths = (value: number) => Math.round(value * 10) / 10

/** A temperature in the shop's measure: `12.5 °C`, `54.5 °F`. */
export function degreesWords(celsius: number, units: string): string {
  return units === 'us' ? `${tenths(fahrenheitOf(celsius))} °F` : `${tenths(celsius)} °C`
}

/** A difference of temperatures in the shop's measure. */
export function marginWords(celsius: number, units: string): string {
  return units === 'us' ? `${tenths(celsius * 1.8)} °F` : `${tenths(celsius)} °C`
}
