import { type Confidence, deviates } from './confidence.ts'
import { type LifePrior, objectiveAt } from './fit.ts'
import type { LearnedLife } from './learn.ts'
import { ageAtSurvival, survival } from './weibull.ts'

/** One age on the picture of a life: the share still working, and the band it may lie in. */
export interface CurvePoint {
  readonly age: number
  readonly share: number
  readonly low: number
  readonly high: number
}

/**
 * A learned life as points of a curve from age 0 to `untilAge`, with a pointwise band for the picture. The band is
 * the delta method on the logarithm of the cumulative hazard, which keeps it between 0 and 1; the range of the
 * renewal age itself is the profile's, in `LearnedLife.range`. (Meeker and Escobar 1998, section 8.4, from memory.)
 */
export function lifeCurve(
  learned: LearnedLife,
  prior: LifePrior,
  untilAge: number,
  points: number,
  confidence: Confidence = learned.confidence,
): CurvePoint[] {
  const { life, level, readings } = learned
  const hazardAtAge = -Math.log(level)
  const point = { logAge: Math.log(ageAtSurvival(life, level)), logShape: Math.log(life.shape) }
  const at = objectiveAt(readings, point, hazardAtAge, prior)
  const det = at.ageAge * at.shapeShape - at.ageShape ** 2
  const ageVar = -at.shapeShape / det
  const shapeVar = -at.ageAge / det
  const both = at.ageShape / det
  const z = deviates(confidence)
  return Array.from({ length: points }, (_, i) => {
    const age = (untilAge * i) / (points - 1)
    const share = survival(life, age)
    if (age === 0) return { age, share, low: 1, high: 1 }
    const u = life.shape * (Math.log(age) - point.logAge)
    const variance = life.shape ** 2 * ageVar - 2 * life.shape * u * both + u * u * shapeVar
    const off = z * Math.sqrt(Math.max(0, variance))
    const logHazard = Math.log(hazardAtAge) + u
    return {
      age,
      share,
      low: Math.exp(-Math.exp(logHazard + off)),
      high: Math.exp(-Math.exp(logHazard - off)),
    }
  })
}
