/** What steps really drew of a product, beside their recipe. */
import { say } from '../../domain/language/index.ts'
import {
  amountWords,
  handsOf,
  realUse,
  realUseText,
  type UseReading,
  unitsOf,
} from '../../domain/shelf/index.ts'
import { type SizeClass, sizeClasses } from '../../domain/vehicle/index.ts'
import { type DrawnRow, drawnRows } from '../../store/drawnRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Counted } from './countedProducts.ts'
import { type RecipeView, recipesWith } from './recipes.ts'
import { workKey } from './stepDraws.ts'

/** What steps really drew, beside their recipe; learned without letting a spill or a slip of the pen count. */
export type LearningView = ReturnType<typeof stepViews>[number]

/** By step and vehicle size: the recipe, what is typical, who differs, and what "use this as the recipe" would set. */
export async function learningOf(tx: Tx, product: Counted) {
  const [rows, recipes, crew] = await Promise.all([
    drawnRows(tx, product.id),
    recipesWith(tx, product.id),
    tx.crewMember.findMany({ select: { id: true, name: true } }),
  ])
  const names = new Map(crew.map(each => [each.id, each.name]))
  return [...Map.groupBy(rows, workKey).values()].flatMap(group => stepViews(group, product, recipes, names))
}

function stepViews(
  rows: readonly DrawnRow[],
  product: Counted,
  recipes: readonly RecipeView[],
  names: ReadonlyMap<string, string>,
) {
  const last = rows.at(-1)
  if (!last) return []
  const { stage, name } = last
  const recipe = recipes.find(each => workKey({ stage: each.stage, name: each.stepName }) === workKey(last))
  // Judged against the recipe as it is now: once it has been learned, there is nothing more to suggest.
  const recipeCenti = (row: DrawnRow) =>
    recipe ? Math.round(recipe.bySize[row.sizeClass as SizeClass].amount * 100) : row.expectedCenti
  const reading = (row: DrawnRow, technicianId: string): UseReading => ({
    productId: product.id,
    sizeClass: row.sizeClass as SizeClass,
    technicianId,
    recipeCenti: recipeCenti(row),
    actualCenti: row.actualCenti,
    at: row.confirmedAt,
  })
  const hands = handsOf(rows.flatMap(row => (row.crew?.split(',') ?? []).map(id => reading(row, id))))
  return realUse(rows.map(row => reading(row, '')))
    .sort((a, b) => sizeClasses.indexOf(a.sizeClass) - sizeClasses.indexOf(b.sizeClass))
    .map(use => ({
      stage,
      stepName: name,
      sizeClass: use.sizeClass,
      recipe: recipe ? { ...recipe.bySize[use.sizeClass] } : null,
      /** Confirmed draws looked at, and those set aside as out of line. */
      steps: use.readings,
      outliers: use.farOutAt.length,
      typical: unitsOf(use.typicalCenti),
      spread: unitsOf(use.spreadCenti),
      words: realUseText(use, product.unit),
      byCrew: hands.map(hand => ({
        crewId: hand.technicianId,
        name: names.get(hand.technicianId) ?? say('somebody no longer of the crew'),
        steps: hand.readings,
        typical: unitsOf(Math.round(use.typicalCenti * hand.ratio)),
        words: handWords(hand.ratio, hand.real),
      })),
      /** What `shelf.useAsRecipe` would write; null where the recipe is good, or too few steps tell. */
      suggestion: use.suggestion
        ? {
            amount: unitsOf(use.suggestion.centi),
            spread: unitsOf(use.suggestion.sdCenti),
            words: say('Use {centi}, give or take {sdCenti}, as the recipe for this size.', {
              centi: amountWords(use.suggestion.centi, product.unit),
              sdCenti: amountWords(use.suggestion.sdCenti, product.unit),
            }),
          }
        : null,
    }))
}

function handWords(ratio: number, real: boolean): string {
  const percent = Math.round(Math.abs(ratio - 1) * 100)
  if (!real) return say('like everybody')
  return ratio > 1
    ? say('{percent} % more than everybody', { percent })
    : say('{percent} % less than everybody', { percent })
}
