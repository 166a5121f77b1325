/** From the scale to the ledger: what was drawn, and what is left, by weight. Grams need the density to become ml. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { centiOf, type Unit } from './amount.ts'
import { weightWords } from './amountWords.ts'

export interface Weighed {
  readonly unit: Unit
  /** g/ml; needed for products counted in ml. */
  readonly densityGPerMl: number | null
}

/** Content of a bottle that weighs `grossG` with its empty weight `tareG`, in centi: what a count by scale finds. */
export function contentByWeight(grossG: number, tareG: number, product: Weighed): number {
  checkWeight(grossG, 'grossG')
  checkWeight(tareG, 'tareG')
  if (grossG < tareG)
    refuse(
      'lighter-than-empty',
      { grossG },
      say("{gross} is less than the empty bottle's {tare}; tare the scale and weigh again.", {
        gross: weightWords(grossG),
        tare: weightWords(tareG),
      }),
    )
  return centiOf(inUnit(grossG - tareG, product), 'grossG')
}

function inUnit(grams: number, { unit, densityGPerMl }: Weighed): number {
  if (unit === 'g') return grams
  if (unit === 'piece') refuse('not-weighed', { unit }, say('This is counted in pieces; count them instead.'))
  if (densityGPerMl === null || !(densityGPerMl > 0))
    refuse(
      'density-missing',
      { densityGPerMl },
      say(
        'Weighing a liquid needs its density; take it from the data sheet (section 9) and enter it with the product.',
      ),
    )
  return grams / densityGPerMl
}

function checkWeight(grams: number, field: string): void {
  if (!(grams >= 0 && grams <= 1_000_000))
    refuse(
      'weight-bad',
      { [field]: grams },
      say('{weight} is not a weight; read the scale again.', { weight: weightWords(grams) }),
    )
}
