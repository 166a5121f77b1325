import { say, word } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/** What a factor's figures rest on. There is no published table for any of these: they are the trade's habit. */
export type FactorMark = 'rule of thumb' | 'set by the shop'

export interface FactorChoice {
  readonly id: string
  readonly label: string
  /** What the product's interval is multiplied by: under 1 the protectant goes sooner. */
  readonly multiplier: number
}

/** One circumstance that wears a protectant, with the choices the desk can make for a car. */
export interface ExposureFactor {
  readonly id: string
  readonly label: string
  readonly mark: FactorMark
  readonly choices: readonly FactorChoice[]
}

/** The choice made for a car in each factor, by factor id. */
export type Exposure = Readonly<Record<string, string>>

const choice = (id: string, label: string, multiplier: number): FactorChoice => ({ id, label, multiplier })

/**
 * The factors a shop starts with. Every figure is common practice, no source: a rule of thumb for the shop to change,
 * which the inspections then correct.
 */
export const STARTING_FACTORS: readonly ExposureFactor[] = [
  {
    id: 'kept',
    label: word('Where it stands at night'),
    mark: word('rule of thumb'),
    choices: [
      choice('garage', word('in a garage'), 1.15),
      choice('roof', word('under a roof'), 1),
      choice('outside', word('outside'), 0.85),
    ],
  },
  {
    id: 'distance',
    label: word('Distance a year'),
    mark: word('rule of thumb'),
    choices: [
      choice('low', word('under 8,000 km (5,000 mi)'), 1.1),
      choice('usual', word('8,000 to 20,000 km (5,000 to 12,500 mi)'), 1),
      choice('high', word('20,000 to 35,000 km (12,500 to 22,000 mi)'), 0.9),
      choice('very-high', word('over 35,000 km (22,000 mi)'), 0.8),
    ],
  },
  {
    id: 'climate',
    label: word('Climate'),
    mark: word('rule of thumb'),
    choices: [
      choice('mild', word('mild'), 1),
      choice('hot', word('hot and sunny'), 0.85),
      choice('salt', word('salted winter roads'), 0.85),
      choice('coast', word('by the sea'), 0.9),
    ],
  },
  {
    id: 'wash',
    label: word('How it is washed'),
    mark: word('rule of thumb'),
    choices: [
      choice('hand', word('by hand, mild soap'), 1.05),
      choice('touchless', word('touchless, strong detergent'), 0.9),
      choice('brush', word('in a brush tunnel'), 0.8),
    ],
  },
  {
    id: 'washed',
    label: word('How often it is washed'),
    mark: word('rule of thumb'),
    choices: [
      choice('weekly', word('every week or more'), 0.95),
      choice('usual', word('every two to four weeks'), 1),
      choice('seldom', word('less often: dirt stays on'), 0.9),
    ],
  },
]

/** Refuses a table with a factor or choice named twice, an empty factor, or a multiplier outside 0.2 to 3. */
export function checkFactors(factors: readonly ExposureFactor[]): void {
  const ids = new Set<string>()
  factors.forEach((factor, i) => {
    if (ids.has(factor.id))
      refuse(
        'factor-twice',
        { [`factors.${i}.id`]: factor.id },
        say('"{id}" is there twice; rename one.', { id: factor.id }),
      )
    ids.add(factor.id)
    if (factor.choices.length === 0)
      refuse(
        'factor-empty',
        { [`factors.${i}.choices`]: factor.choices },
        say('"{label}" has no choices; add one or remove the factor.', { label: factor.label }),
      )
    const choices = new Set<string>()
    factor.choices.forEach((one, j) => {
      const field = `factors.${i}.choices.${j}`
      if (choices.has(one.id))
        refuse(
          'choice-twice',
          { [`${field}.id`]: one.id },
          say('"{id}" is there twice; rename one.', { id: one.id }),
        )
      choices.add(one.id)
      if (!(one.multiplier >= 0.2 && one.multiplier <= 3))
        refuse(
          'multiplier-bad',
          { [`${field}.multiplier`]: one.multiplier },
          say('{multiplier} is no sensible multiplier; use 0.2 to 3, 1 for no effect.', {
            multiplier: one.multiplier,
          }),
        )
    })
  })
}
