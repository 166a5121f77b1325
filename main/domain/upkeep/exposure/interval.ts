import { decimalNow, say, sayKept, withinSentence } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import type { Exposure, ExposureFactor, FactorMark } from './factors.ts'

/** One factor's part in an interval, as it is shown. */
export interface IntervalStep {
  readonly factorId: string
  readonly label: string
  /** The choice's words; null when nothing was chosen for this car, and the factor counts as 1. */
  readonly chosen: string | null
  readonly multiplier: number
  readonly mark: FactorMark
}

export interface ScaledInterval {
  readonly days: number
  /** What the product's interval was multiplied by, within `LIMITS`. */
  readonly multiplier: number
  readonly steps: readonly IntervalStep[]
  /** Whether the factors together went beyond `LIMITS` and were held there. */
  readonly held: boolean
  readonly exposureClass: ExposureClass
}

export type ExposureClass = 'gentle' | 'ordinary' | 'harsh'

/** Rules of thumb multiplied five times over get silly: no interval shrinks or grows further than this. */
export const LIMITS = { least: 0.5, most: 1.5 } as const

/** Where the classes part; common practice, no source. Lives are learned per product and class. */
export const CLASS_BORDERS = { harshBelow: 0.85, gentleFrom: 1.1 } as const

/** The class an overall multiplier falls in. */
export function exposureClass(multiplier: number): ExposureClass {
  if (multiplier < CLASS_BORDERS.harshBelow) return 'harsh'
  return multiplier < CLASS_BORDERS.gentleFrom ? 'ordinary' : 'gentle'
}

/**
 * A product's renewal interval scaled to how a car lives: days times each chosen factor, every factor shown. A rule
 * of thumb throughout; `learnLife` corrects it by what inspections find. Refuses an interval that is no whole number
 * of days from 1 up, and a choice the table does not have.
 */
export function scaleInterval(
  productDays: number,
  exposure: Exposure,
  factors: readonly ExposureFactor[],
): ScaledInterval {
  if (!Number.isSafeInteger(productDays) || productDays < 1)
    refuse(
      'interval-bad',
      { productDays },
      say('{productDays} days is not an interval; use whole days from 1 up.', { productDays }),
    )
  const steps = factors.map((factor): IntervalStep => {
    const id = exposure[factor.id]
    const chosen = factor.choices.find(one => one.id === id)
    if (id !== undefined && !chosen)
      refuse(
        'choice-unknown',
        { [`exposure.${factor.id}`]: id },
        say('"{label}" has no choice "{id}"; choose one of {choices}.', {
          label: sayKept(factor.label),
          id,
          choices: factor.choices.map(one => one.id).join(', '),
        }),
      )
    return {
      factorId: factor.id,
      label: factor.label,
      chosen: chosen?.label ?? null,
      multiplier: chosen?.multiplier ?? 1,
      mark: factor.mark,
    }
  })
  const product = steps.reduce((all, step) => all * step.multiplier, 1)
  const multiplier = Math.min(LIMITS.most, Math.max(LIMITS.least, product))
  return {
    days: Math.max(1, Math.round(productDays * multiplier)),
    multiplier,
    steps,
    held: multiplier !== product,
    exposureClass: exposureClass(multiplier),
  }
}

/** The interval in a sentence that names every factor that moved it. */
export function intervalWords(productDays: number, interval: ScaledInterval): string {
  const moved = interval.steps.filter(step => step.chosen !== null && step.multiplier !== 1)
  if (moved.length === 0)
    return say("The product's {productDays} days, unchanged: nothing about this car calls for other.", {
      productDays,
    })
  const parts = moved.map(
    step =>
      `${withinSentence(sayKept(step.label))}: ${sayKept(step.chosen)} (× ${decimalNow(step.multiplier)})`,
  )
  const limit = interval.held ? say(', limited to × {multiplier}', { multiplier: interval.multiplier }) : ''
  return say("{days} days: the product's {productDays}, by rule of thumb for {parts}{limit}.", {
    days: interval.days,
    productDays,
    parts: parts.join('; '),
    limit,
  })
}
