/** A count of one lot: the difference to the ledger becomes a move, and nothing where there is none. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { unitsOf } from './amount.ts'
import type { MoveDraft } from './ledger.ts'

export interface Counted {
  readonly lotId: string
  readonly productId: string
  readonly countedCenti: number
  readonly at: number
  readonly by: string
  readonly why: string
}

/** The move that brings the ledger's balance to what was counted; null when they agree. */
export function countMove(balanceCenti: number, counted: Counted): MoveDraft | null {
  const { countedCenti, lotId, productId, at, by, why } = counted
  if (!Number.isSafeInteger(countedCenti) || countedCenti < 0)
    refuse(
      'amount-bad',
      { countedCenti },
      say('{countedCenti} cannot be counted; give what is there, 0 for an empty bottle.', {
        countedCenti: unitsOf(countedCenti),
      }),
    )
  if (countedCenti === balanceCenti) return null
  const centi = countedCenti - balanceCenti
  return {
    lotId,
    productId,
    kind: 'count',
    centi,
    at,
    by,
    why,
    stepId: null,
    jobId: null,
    costMinor: null,
    correctsId: null,
  }
}
