import { type Confidence, deviates } from './confidence.ts'
import { climb, type LifePrior, startPoint } from './fit.ts'
import type { LifePoint } from './likelihood.ts'
import type { LifeReading } from './reading.ts'

export interface AgeRange {
  readonly low: number
  /** Null: the readings set no upper end. */
  readonly high: number | null
}

/** How far out the ends are looked for: a factor of 3,000 either way. */
const REACH = 8

/**
 * The range the age at which `level` still work may lie in, by profile likelihood: every age for which the best
 * fitting curve is at most half a squared normal quantile less likely (prior included) than the best of all. Chosen
 * over the delta method because it needs no symmetry, stays over zero, honours open ends, and does not depend on how
 * the curve is written. (Profile likelihood: Meeker and Escobar 1998, section 8.3, from memory.)
 */
export function ageRange(
  readings: readonly LifeReading[],
  prior: LifePrior | null,
  level: number,
  confidence: Confidence,
): AgeRange {
  const hazardAtAge = -Math.log(level)
  const top = climb(readings, startPoint(readings, hazardAtAge, prior), hazardAtAge, prior)
  if (!top) return { low: 0, high: null }
  const floor = top.at.value - deviates(confidence) ** 2 / 2
  const end = (side: 1 | -1): number | null => {
    let inside: LifePoint = top.point
    let step = 0.05
    for (;;) {
      const there = profileAt(readings, inside, inside.logAge + side * step, hazardAtAge, prior)
      if (!there || there.value < floor) break
      inside = there.point
      if (Math.abs(inside.logAge - top.point.logAge) > REACH) return null
      step *= 1.5
    }
    let outside = inside.logAge + side * step
    while (Math.abs(outside - inside.logAge) > 1e-9) {
      const middle = (outside + inside.logAge) / 2
      const there = profileAt(readings, inside, middle, hazardAtAge, prior)
      if (there && there.value >= floor) inside = there.point
      else outside = middle
    }
    return Math.exp(inside.logAge)
  }
  return { low: end(-1) ?? 0, high: end(1) }
}

/** The best shape for a given age. */
function profileAt(
  readings: readonly LifeReading[],
  near: LifePoint,
  logAge: number,
  hazardAtAge: number,
  prior: LifePrior | null,
) {
  const top = climb(readings, { logAge, logShape: near.logShape }, hazardAtAge, prior, 'age')
  return top && { point: top.point, value: top.at.value }
}
