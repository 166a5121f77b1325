import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { amountWords } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { appendMoves } from './append.ts'
import { asField } from './asField.ts'
import { countedProduct, shelfDay } from './countedProducts.ts'
import type { TakeBackInput } from './inputs.ts'
import { type StockChangeView, stockNow } from './stockChanges.ts'

/**
 * Puts a move right that should not have been made: nothing is erased, a correction that names it takes it back. A use
 * taken back leaves its step to be confirmed again. Refused where it was taken back already, or where the bottle has
 * meanwhile given what the move had added.
 */
export function takeBackMove(desk: Desk, input: TakeBackInput): Promise<StockChangeView> {
  return act(desk, async (tx, audit) => {
    const move = await tx.stockMove.findUnique({
      where: { seq: input.seq },
      include: { lot: { select: { number: true } } },
    })
    if (!move) refuse('missing', { seq: input.seq }, say('This line is not in the ledger.'))
    const earlier = await tx.stockMove.findFirst({ where: { kind: 'correction', correctsSeq: move.seq } })
    if (earlier || move.kind === 'correction')
      refuse(
        'taken-back',
        { seq: input.seq },
        earlier
          ? say('This line was put right already; look at the ledger again.')
          : say('A correction is not put right by another: count the bottle instead.'),
      )
    const product = await countedProduct(tx, move.productId)
    await asField('', () =>
      appendMoves(tx, [
        {
          lotId: move.lotId,
          productId: move.productId,
          kind: 'correction',
          centi: -move.centi,
          at: desk.now(),
          by: desk.who,
          why: checkNote(input.reason, 'reason', 200),
          jobId: move.jobId,
          position: move.position,
          costMinor: null,
          correctsSeq: move.seq,
        },
      ]),
    )
    if (move.kind === 'use' && move.jobId !== null && move.position !== null)
      await reopenLine(tx, { jobId: move.jobId, position: move.position, productId: move.productId })
    audit({
      act: 'put right',
      entity: 'stock',
      entityId: move.productId,
      detail: { seq: move.seq, centi: move.centi, reason: input.reason },
    })
    const words = say(
      '{kind, select, receipt {receipt} use {use} waste {waste} return {return} mix {mix} other {count}} of {amount} {way, select, from {from} other {into}} no. {number} of {name} taken back',
      {
        kind: move.kind,
        amount: amountWords(Math.abs(move.centi), product.unit),
        way: move.centi < 0 ? 'from' : 'into',
        number: move.lot.number,
        name: product.name,
      },
    )
    return stockNow(tx, await shelfDay(tx, desk.now()), product, [words])
  })
}

/** With the last of its uses taken back, a step's line waits to be confirmed again; else it has used so much less. */
async function reopenLine(
  tx: Tx,
  key: { jobId: string; position: number; productId: string },
): Promise<void> {
  const { _sum } = await tx.stockMove.aggregate({
    where: { ...key, kind: { in: ['use', 'correction'] } },
    _sum: { centi: true },
  })
  const left = -(_sum.centi ?? 0)
  await tx.stepDraw.updateMany({
    where: key,
    data:
      left === 0
        ? { confirmedAt: null, actualCenti: null, how: null }
        : { actualCenti: left, how: 'corrected' },
  })
}
