/**
 * Chances on a lattice: `chances[k]` is the chance of exactly `k` cells. Arrays stay short because whatever lies
 * beyond the cap is kept in the last cell, which then reads "this much or more". Demand over several days is the
 * convolution of the days: the limit a bootstrap approaches when it draws days from the history again and again,
 * reached here in one pass and without random numbers.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export type Chances = Float64Array

/** The value at `k`, such as the chance of exactly `k` cells; 0 beyond the end. */
export function chanceOf(chances: Chances, k: number): number {
  return chances[k] ?? 0
}

/** Adds to the value at `k`, in place. */
export function addTo(chances: Chances, k: number, chance: number): void {
  chances[k] = (chances[k] ?? 0) + chance
}

/** Certainly nothing. */
export const NOTHING: Chances = Float64Array.of(1)

/** The sum of two independent amounts, with everything from `cap` cells up gathered in the last. */
export function addIndependent(a: Chances, b: Chances, cap: number): Chances {
  const sum = new Float64Array(Math.min(a.length + b.length - 1, cap + 1))
  const last = sum.length - 1
  for (let j = 0; j < b.length; j++) {
    const chance = chanceOf(b, j)
    if (chance === 0) continue
    const inside = Math.min(a.length, last - j)
    for (let i = 0; i < inside; i++) addTo(sum, i + j, chanceOf(a, i) * chance)
    for (let i = Math.max(inside, 0); i < a.length; i++) addTo(sum, last, chanceOf(a, i) * chance)
  }
  return sum
}

/** One of several amounts, each with its weight; the weights add up to 1. */
export function mixture(parts: readonly Chances[], weights: readonly number[]): Chances {
  const mixed = new Float64Array(Math.max(...parts.map(part => part.length)))
  parts.forEach((part, k) => {
    const weight = weights[k] ?? 0
    for (let i = 0; i < part.length; i++) addTo(mixed, i, weight * chanceOf(part, i))
  })
  return mixed
}

/** A histogram of amounts in cells; an amount between two cells is shared by both, so that the mean stays exact. */
export function histogram(amounts: Iterable<number>, nothing: number): Chances {
  const counts: number[] = [nothing]
  let total = nothing
  for (const amount of amounts) {
    const low = Math.floor(amount)
    while (counts.length < low + 2) counts.push(0)
    counts[low] = (counts[low] ?? 0) + (1 - (amount - low))
    counts[low + 1] = (counts[low + 1] ?? 0) + amount - low
    total++
  }
  while (counts.length > 1 && counts.at(-1) === 0) counts.pop()
  return total === 0 ? NOTHING : Float64Array.from(counts, count => count / total)
}

/** Expected cells. */
export function meanOf(chances: Chances): number {
  return chances.reduce((sum, chance, k) => sum + k * chance, 0)
}

/** Variance in cells squared. */
export function varianceOf(chances: Chances): number {
  const mean = meanOf(chances)
  return chances.reduce((sum, chance, k) => sum + (k - mean) ** 2 * chance, 0)
}

/** The chance of at most `k` cells, for every `k`. */
export function cumulative(chances: Chances): Float64Array {
  let sum = 0
  return chances.map(chance => {
    sum += chance
    return Math.min(1, sum)
  })
}

/** The least number of cells that covers the amount with a chance of at least `share` (0 < share < 1). */
export function leastCover(chances: Chances, share: number): number {
  if (!(share > 0 && share < 1))
    refuse(
      'share-bad',
      { share },
      say('{share} is not a share between 0 and 1; give one such as 0.95.', { share }),
    )
  const k = cumulative(chances).findIndex(chance => chance >= share - 1e-12)
  return k < 0 ? chances.length - 1 : k
}

/** The same amount happening `factor` times as often; where that would pass always, the amounts grow instead. */
export function moreOften(chances: Chances, factor: number): Chances {
  const busy = 1 - chanceOf(chances, 0)
  if (busy === 0) return chances
  const often = Math.min(factor, 1 / busy)
  const stretch = factor / often
  const size = stretch > 1 + 1e-9 ? stretched(chances, stretch) : chances
  const scaled = size.map(chance => chance * often)
  scaled[0] = 1 - often * (1 - chanceOf(size, 0))
  return scaled
}

function stretched(chances: Chances, factor: number): Chances {
  const wider = new Float64Array(Math.ceil((chances.length - 1) * factor) + 1)
  chances.forEach((chance, k) => {
    const low = Math.floor(k * factor)
    const part = k * factor - low
    addTo(wider, low, chance * (1 - part))
    if (part > 0) addTo(wider, low + 1, chance * part)
  })
  return wider
}

/** The amount with an unbiased disturbance of the given variance (cells squared) added; never below nothing. */
export function disturbed(chances: Chances, variance: number, cap: number): Chances {
  let wide = chances
  const rounds = Math.ceil(variance / 0.5)
  for (let round = 0; round < rounds; round++) {
    const half = variance / rounds / 2
    const next = new Float64Array(Math.min(wide.length + 1, cap + 1))
    for (let k = 0; k < wide.length; k++) {
      const chance = chanceOf(wide, k)
      addTo(next, Math.max(0, k - 1), chance * half)
      addTo(next, k, chance * (1 - 2 * half))
      addTo(next, Math.min(next.length - 1, k + 1), chance * half)
    }
    wide = next
  }
  return wide
}
