import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkNumbers } from './numbers.ts'

/**
 * The value that a share `p` (0 to 1) of the values lies at or below, between two of them in proportion: definition 7 of
 * Hyndman and Fan 1996, the one spreadsheets use.
 * @throws Refusal `too-few` without values, `share-bad` for a share that is none, `reading-bad` for what is no number.
 */
export function quantile(values: readonly number[], p: number): number {
  if (!(p >= 0 && p <= 1)) refuse('share-bad', { p }, say('{p} is not a share; give one from 0 to 1.', { p }))
  checkNumbers(values, 'values')
  if (values.length === 0) refuse('too-few', { values }, say('There is no value to take a quantile of.'))
  const sorted = [...values].sort((a, b) => a - b)
  const place = (sorted.length - 1) * p
  const low = sorted[Math.floor(place)]!
  const high = sorted[Math.ceil(place)]!
  return low + (place - Math.floor(place)) * (high - low)
}
