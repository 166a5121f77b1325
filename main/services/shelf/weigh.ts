import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { amountWords, contentByWeight as netByWeight, weightWords } from '../../domain/shelf/index.ts'
import type { LotRow } from '../../store/lotRows.ts'
import type { Counted } from './countedProducts.ts'

/** What stands in the way of weighing a bottle, in words; null: nothing. */
export function whyNotWeighed(product: Counted, lot: LotRow | undefined): string | null {
  if (product.unit === 'piece') return say('Pieces are counted, not weighed.')
  if (product.unit === 'ml' && product.densityGPerMl === null)
    return say('The density of {name} is not known: take it from the data sheet and enter it on its page.', {
      name: product.name,
    })
  if (!lot) return say('No bottle of {name} is on the shelf to weigh.', { name: product.name })
  if (lot.tareG === null)
    return say(
      'The weight of the empty bottle is not known: weigh one with its cap and enter it with the size.',
    )
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
    refuse('cannot-weigh', { weighed: grossG }, why ?? say('Choose the bottle that was weighed.'))
  const { tareG, number } = lot
  if (grossG === undefined || !Number.isFinite(grossG) || grossG < tareG - 0.5)
    refuse(
      'weight-bad',
      { 'weighed.grossG': grossG },
      say('No. {number} cannot weigh {gross}: the empty bottle alone weighs {tare}. Weigh it again.', {
        number,
        gross: grossG === undefined ? say('nothing') : weightWords(grossG),
        tare: weightWords(tareG),
      }),
    )
  return netByWeight(Math.max(grossG, tareG), tareG, product)
}

/** What was taken from a bottle by its weight: what the ledger says it held, less what it holds. */
export function weighedCenti(product: Counted, lot: LotRow | undefined, grossG: number | undefined): number {
  const content = contentByWeight(product, lot, grossG)
  const { number, centi } = found(lot, { lotId: null }, say('Choose the bottle that was weighed.'))
  if (content > centi)
    refuse(
      'weighs-more',
      { 'weighed.grossG': grossG },
      say(
        'By its weight no. {number} holds {content}, more than the {centi} it should have held before: count it first (as {content}), or choose the bottle that was used.',
        {
          number,
          content: amountWords(content, product.unit),
          centi: amountWords(centi, product.unit),
        },
      ),
    )
  return centi - content
}
