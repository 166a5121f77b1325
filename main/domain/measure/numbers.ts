import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** What no reading of a shop's instruments, and no sum over years of them, comes near. */
const most = 1e12

/** Refuses a list in which one is no number, and names which. */
export function checkNumbers(values: readonly number[], field: string): void {
  for (const [i, value] of values.entries()) checkNumber(value, `${field}.${i}`)
}

/** Refuses what is no number, or larger than anything that is measured here. */
export function checkNumber(value: number, field: string): number {
  if (!Number.isFinite(value) || Math.abs(value) > most)
    refuse(
      'reading-bad',
      { [field]: value },
      say('{value} is no reading; type the number the instrument shows.', { value }),
    )
  return value
}

/** Refuses what is not more than 0. `what` as in "The repeatability". */
export function checkPositive(value: number, field: string, what: string): number {
  if (!(checkNumber(value, field) > 0))
    refuse(
      'not-positive',
      { [field]: value },
      say('{what} is {value}; give a number above 0.', { what, value }),
    )
  return value
}
