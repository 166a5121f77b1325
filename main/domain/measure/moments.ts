/** Mean and spread of readings, and whether one leans on the one before it. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkNumbers } from './numbers.ts'

export interface Moments {
  readonly n: number
  readonly mean: number
  /** Sample standard deviation (n − 1); 0 for a single reading. */
  readonly sd: number
  /** Lag-1 autocorrelation: near 1 where readings creep, near 0 where they scatter; 0 where all are equal. */
  readonly lag1: number
}

/**
 * Mean, standard deviation and lag-1 autocorrelation of readings in the order they were taken. Distances are taken from a
 * first middle, so that large readings that differ by little lose no digits (a one-pass sum of squares does).
 * Definitions: NIST/SEMATECH e-Handbook 1.3.5.1, 1.3.5.6 and 1.3.5.12.
 * @throws Refusal `too-few` without readings, `reading-bad` for one that is no number.
 */
export function momentsOf(values: readonly number[]): Moments {
  checkNumbers(values, 'values')
  const [first] = values
  if (first === undefined) refuse('too-few', { values }, say('There is no reading yet; take one.'))
  const n = values.length
  const mean = first + sum(values.map(value => value - first)) / n
  const away = values.map(value => value - mean)
  // What the mean misses by rounding is taken out again (the corrected two-pass sum of Chan, Golub and LeVeque 1983).
  const squares = sum(away.map(d => d * d)) - sum(away) ** 2 / n
  const leaning = sum(away.slice(1).map((d, i) => d * away[i]!))
  return {
    n,
    mean,
    sd: n === 1 ? 0 : Math.sqrt(squares / (n - 1)),
    lag1: squares > 0 ? leaning / squares : 0,
  }
}

/** The sum of many numbers with what rounding lost carried along (Neumaier 1974). */
export function sum(values: readonly number[]): number {
  let total = 0
  let lost = 0
  for (const value of values) {
    const next = total + value
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total
    total = next
  }
  return total + lost
}

/** The arithmetic mean. @throws Refusal as `momentsOf`. */
export function meanOf(values: readonly number[]): number {
  return momentsOf(values).mean
}
