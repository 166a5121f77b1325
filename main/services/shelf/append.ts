import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { appended, type MoveDraft } from '../../domain/shelf/index.ts'
import { lotRowsById } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'

/** A move as a use case hands it over: the step it served is named by its place in the job. */
export interface Entry extends Omit<MoveDraft, 'stepId' | 'correctsId'> {
  readonly position?: number | null | undefined
  readonly correctsSeq?: number | null | undefined
}

/** A planned move of the domain, as an entry; steps are named by their place in their job. */
export function entryOf({ stepId, correctsId, ...move }: MoveDraft): Entry {
  return {
    ...move,
    position: stepId === null ? null : Number(stepId),
    correctsSeq: correctsId === null ? null : Number(correctsId),
  }
}

/**
 * Appends moves to the ledger, in order. The balances are read in the same transaction, and transactions follow each
 * other, so of two windows that take the last of a bottle the second sees what the first has left.
 * @throws Refusal `beyond-stock` where a bottle would hold less than nothing, and for every other rule of a move.
 */
export async function appendMoves(tx: Tx, entries: readonly Entry[]): Promise<void> {
  if (entries.length === 0) return
  const rows = await lotRowsById(tx, [...new Set(entries.map(entry => entry.lotId))])
  const lots = new Map(rows.map(row => [row.id, row]))
  const stray = entries.find(entry => lots.get(entry.lotId)?.productId !== entry.productId)
  if (stray)
    refuse(
      'missing',
      { lotId: stray.lotId },
      say('This bottle is not on the shelf; look at the product again.'),
    )
  appended(new Map(rows.map(row => [row.id, row.centi])), entries.map(draftOf))
  await tx.stockMove.createMany({
    data: entries.map(({ position = null, correctsSeq = null, discard = null, ...entry }) => ({
      ...entry,
      discard,
      position,
      correctsSeq,
    })),
  })
}

function draftOf({ position = null, correctsSeq = null, ...entry }: Entry): MoveDraft {
  return {
    ...entry,
    stepId: position === null ? null : String(position),
    correctsId: correctsSeq === null ? null : String(correctsSeq),
  }
}
