/** A test spot: what one panel took, carried over to the correction that is still to come and to its price. */
import { say } from '../language/index.ts'
import { type ThicknessUnits, takenOffWords } from '../measure/index.ts'
import { panelNames } from '../shop/index.ts'

/** What the spot showed. */
export interface SpotFigures {
  /** Hands-on minutes one panel takes with the combination that worked, all its passes together. */
  readonly perPanelMin: number
  /** Clear coat taken off, in micrometres; null: not measured. */
  readonly lostUm: number | null
  /** Gloss units before and after, at one and the same geometry (ISO 2813); null: not measured. */
  readonly glossBefore: number | null
  readonly glossAfter: number | null
}

/** A step as far as a correction goes. */
export interface CorrectionStep {
  readonly kind: string
  readonly stage: string
  readonly minutes: number
  readonly actualStartAt: number | null
}

/** The places of the correcting steps; `ahead` of them none has begun, so that its length is still a plan. */
export function correctionOf(steps: readonly CorrectionStep[]): { all: number[]; ahead: number[] } {
  const all = steps.flatMap((step, i) => (step.kind === 'work' && step.stage === 'correct' ? [i] : []))
  return { all, ahead: all.filter(i => steps[i]?.actualStartAt === null) }
}

/**
 * The minutes of each step with the correction as long as the spot says: a panel's minutes for every panel of the
 * `share` (0 to 1) of the paint it is sold for, divided among its steps as planned and rounded up to the grid. Nothing
 * else changes. A car is counted as eleven panels alike (common practice, no source).
 */
export function correctionAfter(
  steps: readonly CorrectionStep[],
  { perPanelMin, share, gridMin }: { perPanelMin: number; share: number; gridMin: number },
): number[] {
  const { ahead } = correctionOf(steps)
  const planned = ahead.reduce((sum, i) => sum + (steps[i]?.minutes ?? 0), 0)
  const needed = perPanelMin * panelNames.length * share
  return steps.map((step, i) => {
    if (!ahead.includes(i) || planned === 0) return step.minutes
    const part = (needed * step.minutes) / planned
    // The small allowance keeps a sum of parts that is a grid point from becoming the next one.
    return Math.max(gridMin, Math.ceil((part - 1e-9) / gridMin) * gridMin)
  })
}

/** Of a treatment's minutes what part is correction, 0 to 1: so much of its price follows the test spot. */
export function spotPriceWeight(
  steps: readonly { readonly stage: string; readonly minutes: number }[],
): number {
  const all = steps.reduce((sum, step) => sum + step.minutes, 0)
  const correcting = steps.reduce((sum, step) => sum + (step.stage === 'correct' ? step.minutes : 0), 0)
  return all === 0 ? 0 : correcting / all
}

/** A price (minor units) of which `weight` (0 to 1) follows the correction's minutes, from `before` to `after`. */
export function priceAfter(
  priceMinor: number,
  weight: number,
  { before, after }: { before: number; after: number },
): number {
  return before === 0 ? priceMinor : Math.round(priceMinor * (1 + weight * (after / before - 1)))
}

/** More clear coat off one spot than this, and somebody looks again before it goes over the car. */
const muchLostUm = 5

/**
 * What is said beside the figures before the work goes over the whole car. Clear coats are often 35 to 50 micrometres
 * thick, and what keeps sun off the colour lies mostly at the top (common practice, no source).
 */
export function spotCautions(
  { lostUm, glossBefore, glossAfter }: SpotFigures,
  units: ThicknessUnits,
): string[] {
  return [
    ...(lostUm !== null && lostUm > muchLostUm
      ? [
          say(
            '{lost} off one spot is much (more than {much}, common practice): measure what is left on every panel first. The paint maker’s limit decides.',
            { lost: takenOffWords(lostUm, units), much: takenOffWords(muchLostUm, units) },
          ),
        ]
      : []),
    ...(glossBefore !== null && glossAfter !== null && glossAfter <= glossBefore
      ? [say('The spot is no glossier than before: try another combination before the whole car.')]
      : []),
  ]
}
