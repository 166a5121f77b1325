import { found, refuse } from '../../domain/refusal.ts'
import { amountWords, contentByWeight as netByWeight, unitsOf } from '../../domain/shelf/index.ts'
import type { LotRow } from '../../store/lotRows.ts'
import type { Counted } from './countedProducts.ts'

/** What stands in the way of weighing a bottle, in words; null: nothing. */
export function whyNotWeighed(product: Counted, lot: LotRow | undefined): string | null {
  if (product.unit === 'piece') return 'Pieces are counted, not weighed.'
  if (product.unit === 'ml' && product.densityGPerMl === null)
    return `The density of ${product.name} is not known: take it from the data sheet and enter it on its page.`
  if (!lot) return `No bottle of ${product.name} is on the shelf to weigh.`
  if (lot.tareG === null)
    return 'The weight of the empty bottle is not known: weigh one with its cap and enter it with the size.'
  return null
}

/** What a bottle holds by its weight, in hundredths of the product's unit. Refuses less than the empty bottle. */
export function contentByWeight(
  product: Counted,
  lot: LotRow | undefined,
  grossG: number | undefined,
): number {
  const why = whyNotWeighed(product, lot)
  if (why !== null || !lot || lot.tareG === null)
    refuse('cannot-weigh', { weighed: grossG }, why ?? 'Choose the bottle that was weighed.')
  const { tareG, number } = lot
  if (grossG === undefined || !Number.isFinite(grossG) || grossG < tareG - 0.5)
    refuse(
      'weight-bad',
      { 'weighed.grossG': grossG },
      `No. ${number} cannot weigh ${grossG ?? 'nothing'} g: the empty bottle alone weighs ${tareG} g. Weigh it again.`,
    )
  return netByWeight(Math.max(grossG, tareG), tareG, product)
}

/** What was taken from a bottle by its weight: what the ledger says it held, less what it holds. */
export function weighedCenti(product: Counted, lot: LotRow | undefined, grossG: number | undefined): number {
  const content = contentByWeight(product, lot, grossG)
  const { number, centi } = found(lot, { lotId: null }, 'Choose the bottle that was weighed.')
  if (content > centi)
    refuse(
      'weighs-more',
      { 'weighed.grossG': grossG },
      `By its weight no. ${number} holds ${amountWords(content, product.unit)}, more than the ` +
        `${amountWords(centi, product.unit)} it should have held before: count it first (as ${unitsOf(content)}), ` +
        'or choose the bottle that was used.',
    )
  return centi - content
}
