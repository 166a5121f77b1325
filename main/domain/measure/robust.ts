import { median } from './median.ts'

/** Middle and spread of readings of which some are plainly wrong: a bottle knocked over, a decimal point slipped. */

/** Median of the distances to the median. */
export function medianDeviation(values: readonly number[]): number {
  const middle = median(values)
  return median(values.map(value => Math.abs(value - middle)))
}

/**
 * The spread as a standard deviation that far-out values do not move: 1.4826 times the median deviation. Where more
 * than half the values are equal that is 0, and 1.2533 times the mean deviation stands in (Iglewicz and Hoaglin 1993).
 */
export function robustSpread(values: readonly number[]): number {
  const deviation = medianDeviation(values)
  if (deviation > 0) return deviation / 0.6745
  const middle = median(values)
  return values.length === 0
    ? 0
    : (1.2533 * values.reduce((sum, v) => sum + Math.abs(v - middle), 0)) / values.length
}

/** Which values lie far out: modified score 0.6745 (x − median) / MAD beyond 3.5 (NIST/SEMATECH e-Handbook 1.3.5.17). */
export function farOut(values: readonly number[]): boolean[] {
  const middle = median(values)
  const spread = robustSpread(values)
  return values.map(value => spread > 0 && Math.abs(value - middle) / spread > 3.5)
}
