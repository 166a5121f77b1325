import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Absolute zero, below which no reading is a temperature. */
const absoluteZeroC = -273.15

/** Degrees Celsius from degrees Fahrenheit: (f − 32) / 1.8. Source: NIST Special Publication 811, appendix B.8. */
export function celsiusOf(fahrenheit: number): number {
  return checkC((fahrenheit - 32) / 1.8, 'fahrenheit', fahrenheit)
}

/** Degrees Fahrenheit from degrees Celsius: 1.8 c + 32. Source: NIST Special Publication 811, appendix B.8. */
export function fahrenheitOf(celsius: number): number {
  return 1.8 * checkC(celsius, 'celsius', celsius) + 32
}

/** A difference of so many degrees Celsius in Fahrenheit: without the 32. Source: NIST SP 811, appendix B.8. */
export function differenceFahrenheitOf(differenceC: number): number {
  return (differenceC * 9) / 5
}

function checkC(celsius: number, field: string, value: number): number {
  // Half a thousandth of slack: -459.67 °F is absolute zero exactly, and binary fractions are not.
  if (!(celsius >= absoluteZeroC - 0.0005) || !Number.isFinite(celsius))
    refuse(
      'temperature-impossible',
      { [field]: value },
      say('{value} is below absolute zero or not a number; check the reading and its unit.', { value }),
    )
  return celsius
}
