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
    label: 'Where it stands at night',
    mark: 'rule of thumb',
    choices: [
      choice('garage', 'in a garage', 1.15),
      choice('roof', 'under a roof', 1),
      choice('outside', 'outside', 0.85),
    ],
  },
  {
    id: 'distance',
    label: 'Distance a year',
    mark: 'rule of thumb',
    choices: [
      choice('low', 'under 8,000 km (5,000 mi)', 1.1),
      choice('usual', '8,000 to 20,000 km (5,000 to 12,500 mi)', 1),
      choice('high', '20,000 to 35,000 km (12,500 to 22,000 mi)', 0.9),
      choice('very-high', 'over 35,000 km (22,000 mi)', 0.8),
    ],
  },
  {
    id: 'climate',
    label: 'Climate',
    mark: 'rule of thumb',
    choices: [
      choice('mild', 'mild', 1),
      choice('hot', 'hot and sunny', 0.85),
      choice('salt', 'salted winter roads', 0.85),
      choice('coast', 'by the sea', 0.9),
    ],
  },
  {
    id: 'wash',
    label: 'How it is washed',
    mark: 'rule of thumb',
    choices: [
      choice('hand', 'by hand, mild soap', 1.05),
      choice('touchless', 'touchless, strong detergent', 0.9),
      choice('brush', 'in a brush tunnel', 0.8),
    ],
  },
  {
    id: 'washed',
    label: 'How often it is washed',
    mark: 'rule of thumb',
    choices: [
      choice('weekly', 'every week or more', 0.95),
      choice('usual', 'every two to four weeks', 1),
      choice('seldom', 'less often: dirt stays on', 0.9),
    ],
  },
]

/** Refuses a table with a factor or choice named twice, an empty factor, or a multiplier outside 0.2 to 3. */
export function checkFactors(factors: readonly ExposureFactor[]): void {
  const ids = new Set<string>()
  factors.forEach((factor, i) => {
    if (ids.has(factor.id))
      refuse('factor-twice', { [`factors.${i}.id`]: factor.id }, `"${factor.id}" is there twice; rename one.`)
    ids.add(factor.id)
    if (factor.choices.length === 0)
      refuse(
        'factor-empty',
        { [`factors.${i}.choices`]: factor.choices },
        `"${factor.label}" has no choices; add one or remove the factor.`,
      )
    const choices = new Set<string>()
    factor.choices.forEach((one, j) => {
      const field = `factors.${i}.choices.${j}`
      if (choices.has(one.id))
        refuse('choice-twice', { [`${field}.id`]: one.id }, `"${one.id}" is there twice; rename one.`)
      choices.add(one.id)
      if (!(one.multiplier >= 0.2 && one.multiplier <= 3))
        refuse(
          'multiplier-bad',
          { [`${field}.multiplier`]: one.multiplier },
          `${one.multiplier} is no sensible multiplier; use 0.2 to 3, 1 for no effect.`,
        )
    })
  })
}
