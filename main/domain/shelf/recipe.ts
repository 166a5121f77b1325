/** What a step draws, by vehicle size, and what a finished step proposes. */
import { refuse } from '../refusal.ts'
import { type SizeClass, sizeClasses } from '../vehicle/index.ts'
import { checkPositive, unitsOf } from './amount.ts'
import type { BookedDraw } from './projection.ts'

/** An amount with the spread it usually has. */
export interface RecipeAmount {
  readonly centi: number
  readonly sdCenti: number
}

export interface RecipeLine {
  /** The treatment's step it belongs to. */
  readonly stepTemplateId: string
  readonly productId: string
  /** Sizes without an entry draw nothing of it. */
  readonly bySize: Readonly<Partial<Record<SizeClass, RecipeAmount>>>
}

/** Refuses a recipe line nobody could draw by. */
export function checkRecipe(line: RecipeLine): void {
  const sizes = sizeClasses.filter(size => line.bySize[size] !== undefined)
  if (sizes.length === 0)
    refuse('recipe-empty', { bySize: line.bySize }, 'Give an amount for at least one vehicle size.')
  for (const size of sizes) {
    const { centi, sdCenti } = line.bySize[size]!
    checkPositive(centi, `bySize.${size}.centi`)
    if (!(sdCenti >= 0 && sdCenti <= centi))
      refuse(
        'spread-bad',
        { [`bySize.${size}.sdCenti`]: sdCenti },
        `A spread of ${unitsOf(sdCenti)} does not fit an amount of ${unitsOf(centi)}; give 0 up to the amount.`,
      )
  }
}

/** A step laid out in the schedule. */
export interface BookedStep {
  readonly jobId: string
  readonly stepId: string
  readonly stepTemplateId: string
  readonly sizeClass: SizeClass
  /** Day number and epoch minute of its start. */
  readonly day: number
  readonly at: number
}

/** What the booked steps will draw, by product, in order of time. */
export function drawsOf(
  steps: readonly BookedStep[],
  recipes: readonly RecipeLine[],
): Map<string, BookedDraw[]> {
  const byStep = Map.groupBy(recipes, line => line.stepTemplateId)
  const draws = new Map<string, BookedDraw[]>()
  for (const step of [...steps].sort((a, b) => a.at - b.at)) {
    for (const line of byStep.get(step.stepTemplateId) ?? []) {
      const amount = line.bySize[step.sizeClass]
      if (!amount) continue
      const { jobId, stepId, day, at } = step
      const list = draws.get(line.productId) ?? []
      list.push({ jobId, stepId, day, at, ...amount })
      draws.set(line.productId, list)
    }
  }
  return draws
}
