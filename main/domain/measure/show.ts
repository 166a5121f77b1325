import { differenceFahrenheitOf, fahrenheitOf } from './temperature.ts'
import { convert } from './units.ts'

/** Which units the shop's screens and papers show. Storage is always metric. */
export type UnitSystem = 'metric' | 'us'

/** A volume as people read it: mL up to a litre, then L; or fl oz up to a gallon, then gal. */
export function showVolume(volumeMl: number, system: UnitSystem, locale: string): string {
  const size = Math.abs(volumeMl)
  if (system === 'metric')
    return size < 1000
      ? inUnit(volumeMl, 'milliliter', locale, size < 10 ? 1 : 0)
      : inUnit(convert(volumeMl, 'mL', 'L'), 'liter', locale, 2)
  return size < convert(1, 'US gallon', 'mL')
    ? inUnit(convert(volumeMl, 'mL', 'US fluid ounce'), 'fluid-ounce', locale, size < 30 ? 2 : 1)
    : inUnit(convert(volumeMl, 'mL', 'US gallon'), 'gallon', locale, 2)
}

/** A temperature to a tenth of a degree Celsius, or to a whole degree Fahrenheit. */
export function showTemperature(temperatureC: number, system: UnitSystem, locale: string): string {
  return system === 'metric'
    ? inUnit(temperatureC, 'celsius', locale, 1)
    : inUnit(fahrenheitOf(temperatureC), 'fahrenheit', locale, 0)
}

/** A difference of temperatures, such as the panel's margin over the dew point: 3 °C is 5.4 °F, not 37.4. */
export function showTemperatureDifference(differenceC: number, system: UnitSystem, locale: string): string {
  return system === 'metric'
    ? inUnit(differenceC, 'celsius', locale, 1)
    : inUnit(differenceFahrenheitOf(differenceC), 'fahrenheit', locale, 1)
}

function inUnit(value: number, unit: string, locale: string, digits: number): string {
  return new Intl.NumberFormat(locale, { style: 'unit', unit, maximumFractionDigits: digits }).format(value)
}
