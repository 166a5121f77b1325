import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { type DecimalInput, readDecimal, rescale } from './decimal.ts'
import { checkMinor } from './minor.ts'

/**
 * Splits an amount by weights so that the parts add up to it exactly: each gets the whole part of its share, and the
 * units left over go to the largest remainders, ties to the earlier part. A negative total is split like the positive
 * one and negated. Weights are decimals of at least zero, not all zero.
 * Source: largest remainder (Hamilton) apportionment.
 *
 * @example allocate(100, [1, 1, 1]) // [34, 33, 33]
 */
export function allocate(totalMinor: number, weights: readonly DecimalInput[]): number[] {
  const small = allocateSmall(checkMinor(totalMinor, 'totalMinor'), weights)
  if (small) return small
  const total = BigInt(totalMinor)
  const exact = weights.map((weight, i) => readDecimal(weight, `weights.${i}`))
  const scale = Math.max(0, ...exact.map(weight => weight.scale))
  const whole = exact.map(weight => rescale(weight, scale, 'half-up'))
  const negative = whole.findIndex(weight => weight < 0n)
  if (negative >= 0)
    refuse(
      'weight-negative',
      { [`weights.${negative}`]: weights[negative] },
      say('A weight of {weights} would take money away; use weights of at least 0.', {
        weights: weights[negative],
      }),
    )
  const sum = whole.reduce((a, b) => a + b, 0n)
  if (sum === 0n)
    refuse('weights-empty', { weights }, say('No weight is above zero; give at least one part a share.'))

  const magnitude = total < 0n ? -total : total
  const parts = whole.map(weight => (magnitude * weight) / sum)
  let left = magnitude - parts.reduce((a, b) => a + b, 0n)
  const byRemainder = whole
    .map((weight, i) => ({ i, remainder: (magnitude * weight) % sum }))
    .sort((a, b) => (a.remainder === b.remainder ? a.i - b.i : a.remainder > b.remainder ? -1 : 1))
  for (const { i } of byRemainder) {
    if (left === 0n) break
    parts[i]! += 1n
    left -= 1n
  }
  return parts.map(part => Number(total < 0n ? -part : part))
}

/** The same in plain numbers, which are exact while every product is below 2^53; null where they are not. */
function allocateSmall(total: number, weights: readonly DecimalInput[]): number[] | null {
  let sum = 0
  for (const weight of weights) {
    if (typeof weight !== 'number' || !Number.isInteger(weight) || weight < 0) return null
    sum += weight
  }
  const magnitude = Math.abs(total)
  if (sum === 0 || !Number.isSafeInteger(magnitude * sum)) return null
  const shares = (weights as readonly number[]).map((weight, i) => {
    const remainder = (magnitude * weight) % sum
    return { i, remainder, part: (magnitude * weight - remainder) / sum }
  })
  let left = magnitude - shares.reduce((added, { part }) => added + part, 0)
  for (const share of shares.toSorted((a, b) => b.remainder - a.remainder || a.i - b.i)) {
    if (left-- <= 0) break
    share.part++
  }
  return shares.map(({ part }) => (total < 0 && part > 0 ? -part : part))
}
