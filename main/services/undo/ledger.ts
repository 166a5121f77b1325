/** The ledger is only ever added to: an act's moves are taken back by moves set against them. */
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { type FollowedRow, keyOf } from '../../store/undo/restoreRows.ts'
import type { Desk } from '../desk/desk.ts'
import { appendMoves } from '../shelf/append.ts'

/** Sets a correction against each of these moves, and gives the bottles they were of. */
export async function counterMoves(
  desk: Desk,
  tx: Tx,
  rows: readonly FollowedRow[],
  no: (why: string) => never,
): Promise<ReadonlySet<string>> {
  if (rows.length === 0) return new Set()
  const seqs = rows.map(row => Number(keyOf(row.key)))
  const moves = await tx.stockMove.findMany({ where: { seq: { in: seqs } }, orderBy: { seq: 'desc' } })
  if (moves.some(move => move.kind === 'correction'))
    no(
      say(
        'It put a line of the ledger right; a correction is not put right by another: count the bottle instead.',
      ),
    )
  try {
    await appendMoves(
      tx,
      moves.map(move => ({
        lotId: move.lotId,
        productId: move.productId,
        kind: 'correction',
        centi: -move.centi,
        at: desk.now(),
        by: desk.who,
        why: say('Taken back'),
        jobId: move.jobId,
        position: move.position,
        costMinor: null,
        correctsSeq: move.seq,
      })),
    )
  } catch (error) {
    if (error instanceof Refusal) no(error.message)
    throw error
  }
  return new Set(moves.map(move => move.lotId))
}
