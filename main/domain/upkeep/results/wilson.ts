import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { type Confidence, deviates } from '../life/confidence.ts'

export interface ShareRange {
  readonly low: number
  readonly high: number
}

/**
 * The range a true share may lie in, given so many successes of so many trials: the score interval of Wilson 1927
 * (NIST/SEMATECH e-Handbook, section 7.2.4.1), which stays in 0..1 and holds also for few trials, none and all. With no
 * trials nothing is known: 0 to 1. Refuses counts that are none.
 */
export function wilson(successes: number, trials: number, confidence: Confidence = 0.95): ShareRange {
  for (const [name, count] of [
    ['successes', successes],
    ['trials', trials],
  ] as const)
    if (!Number.isSafeInteger(count) || count < 0)
      refuse(
        'count-bad',
        { [name]: count },
        say('{count} is not a count; use whole numbers from 0 up.', { count }),
      )
  if (successes > trials)
    refuse(
      'more-than-all',
      { successes },
      say('{successes} of {trials} cannot be; check which were counted.', { successes, trials }),
    )
  if (trials === 0) return { low: 0, high: 1 }
  const z = deviates(confidence)
  const share = successes / trials
  const denominator = 1 + (z * z) / trials
  const middle = (share + (z * z) / (2 * trials)) / denominator
  const half = (z / denominator) * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials))
  return {
    // At the ends the root is exact on paper only.
    low: successes === 0 ? 0 : Math.max(0, middle - half),
    high: successes === trials ? 1 : Math.min(1, middle + half),
  }
}
