/**
 * The standard normal distribution and its loss function, to near machine precision: the classical stock formulas and
 * the projection's band rest on them. Definitions: NIST/SEMATECH e-Handbook 1.3.6.6.1 and 1.3.6.7.1.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Density at `z`. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)
}

/** The tail over the density is 1 / (z + g): Abramowitz and Stegun 26.2.14's continued fraction g, for z > 3. */
function tailFraction(z: number): number {
  let fraction = z
  for (let k = 60; k >= 2; k--) fraction = z + k / fraction
  return 1 / fraction
}

/**
 * The chance of more than `z`, accurate in the tail too: an all-positive power series near the middle, the continued
 * fraction beyond 3, where subtracting from 1 would lose digits.
 */
export function normalTail(z: number): number {
  if (z < 0) return 1 - normalTail(-z)
  if (z > 38) return 0
  if (z > 3) return normalDensity(z) / (z + tailFraction(z))
  let term = z
  let sum = z
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= (z * z) / (2 * k + 1)
    sum += term
  }
  return 0.5 - normalDensity(z) * sum
}

/** The chance of at most `z`. */
export function normalShare(z: number): number {
  return normalTail(-z)
}

/** The `z` that a share `p` (0 < p < 1) lies below. A rough start, then Halley's steps on the exact tail. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1))
    refuse('share-bad', { p }, say('{p} is not a share between 0 and 1; give one such as 0.95.', { p }))
  if (p > 0.5) return -quantileBelowHalf(1 - p)
  return quantileBelowHalf(p)
}

function quantileBelowHalf(p: number): number {
  // Abramowitz and Stegun 26.2.23 (error under 4.5e-4), then each step roughly triples the digits.
  const t = Math.sqrt(-2 * Math.log(p))
  let z = -(
    t -
    (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3)
  )
  for (let step = 0; step < 3; step++) {
    const miss = (normalTail(-z) - p) / normalDensity(z)
    z -= miss / (1 + (z * miss) / 2)
  }
  return p === 0.5 ? 0 : z
}

/**
 * Expected amount by which a standard normal exceeds `z`: L(z) = density(z) − z · tail(z). Beyond 3 the two nearly cancel;
 * with the tail as density / (z + g) what is left of them is density · g / (z + g), which loses no digits.
 */
export function normalLoss(z: number): number {
  if (z <= 3) return normalDensity(z) - z * normalTail(z)
  const fraction = tailFraction(z)
  return (normalDensity(z) * fraction) / (z + fraction)
}
