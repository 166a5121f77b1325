import { decimalNow } from '../../main/domain/language/index.ts'
import { celsiusOf, fahrenheitOf } from '../../main/domain/measure/index.ts'

/** Temperatures in the shop's own measure; inside they are always °C. */

type Units = 'us' | 'metric'

const tenths = (value: number) => Math.round(value * 10) / 10

export const degreeSign = (units: Units) => (units === 'us' ? '°F' : '°C')

/** 17.25 °C as the number a shop in these units reads, to a tenth. */
export function degreesShown(celsius: number, units: Units): number {
  return tenths(units === 'us' ? fahrenheitOf(celsius) : celsius)
}

export function celsiusTyped(value: number, units: Units): number {
  return units === 'us' ? celsiusOf(value) : value
}

/** "17.3 °C", "63.1 °F"; a dash where nothing was measured. */
export function degrees(celsius: number | null, units: Units): string {
  return celsius === null ? '—' : `${decimalNow(degreesShown(celsius, units))} ${degreeSign(units)}`
}

/** "46 %"; a dash where nothing was measured. */
export function percentWords(percent: number | null): string {
  return percent === null ? '—' : `${Math.round(percent)} %`
}
