import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/**
 * The value that a share `p` (0 < p < 1) of Student's t distribution with `freedom` degrees of freedom (1 or more, not
 * necessarily whole) lies below. Found by halving on the distribution itself, which is a regularised incomplete beta
 * function (Abramowitz and Stegun 26.7.1), to about twelve digits.
 */
export function tQuantile(p: number, freedom: number): number {
  if (!(p > 0 && p < 1))
    refuse('share-bad', { p }, say('{p} is not a share between 0 and 1; give one such as 0.95.', { p }))
  if (!(freedom >= 1))
    refuse('too-few', { freedom }, say('Too few readings to say how sure this is; take more.'))
  if (p === 0.5) return 0
  if (p < 0.5) return -tQuantile(1 - p, freedom)
  let [low, high] = [0, 1]
  while (tTail(high, freedom) > 1 - p) high *= 2
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (tTail(middle, freedom) > 1 - p) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** The share of Student's t distribution above t ≥ 0. */
export function tTail(t: number, freedom: number): number {
  return betaShare(freedom / 2, 0.5, freedom / (freedom + t * t)) / 2
}

/** Regularised incomplete beta function I_x(a, b): Lentz's continued fraction (Abramowitz and Stegun 26.5.8). */
function betaShare(a: number, b: number, x: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  // The fraction converges fast on one side only; the other follows by symmetry.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(b, a, 1 - x)
  const front =
    Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x)) / a
  let [c, d] = [1, 1 / (1 - ((a + b) * x) / (a + 1))]
  let fraction = d
  for (let m = 1; m < 1_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / (1 + even * d)
    c = 1 + even / c
    fraction *= c * d
    d = 1 / (1 + odd * d)
    c = 1 + odd / c
    fraction *= c * d
    if (Math.abs(c * d - 1) < 1e-15) break
  }
  return front * fraction
}

/** ln Γ(x) for x > 0: Stirling's series (Abramowitz and Stegun 6.1.41) after stepping up to where it is exact. */
function logGamma(x: number): number {
  let [z, stepped] = [x, 0]
  while (z < 15) stepped += Math.log(z++)
  const r = 1 / (z * z)
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / z
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - stepped
}
