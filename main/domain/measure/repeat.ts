/** When a difference between two readings is one of the surface and not of the instrument. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkNumber, checkPositive } from './numbers.ts'

/** 2.8 = 1.96 √2: two single readings of one thing lie this many standard deviations apart in 5 % of cases at most. */
const factor = 2.8

export interface Difference {
  /** The least difference that is real, in the unit of the readings. */
  readonly limit: number
  readonly difference: number
  readonly real: boolean
}

/**
 * Whether the means of `before` and `after` readings differ by more than repeating the reading would (95 %): the critical
 * difference 2.8 s_r √(1/2n₁ + 1/2n₂); of two single readings that is the repeatability limit 2.8 s_r.
 * Source: ISO 5725-6:1994, 4.1 and 4.2.1 (from memory).
 * @throws Refusal `not-positive` for a repeatability of 0 or less, `count-bad` for counts under 1.
 */
export function differenceOf(
  change: number,
  repeatabilitySd: number,
  counts: { readonly before: number; readonly after: number } = { before: 1, after: 1 },
): Difference {
  checkNumber(change, 'change')
  checkPositive(repeatabilitySd, 'repeatabilitySd', say('The repeatability'))
  for (const [field, count] of Object.entries(counts))
    if (!Number.isSafeInteger(count) || count < 1)
      refuse(
        'count-bad',
        { [field]: count },
        say('{count} readings cannot be compared; take one at least.', { count }),
      )
  const limit = factor * repeatabilitySd * Math.sqrt(1 / (2 * counts.before) + 1 / (2 * counts.after))
  return { limit, difference: change, real: Math.abs(change) > limit }
}
