import { dateOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { amountWords, centiOf, concentrateFor, planDraw, shareWords } from '../../domain/shelf/index.ts'
import { costsOf } from '../../store/costRows.ts'
import { toJson } from '../../store/json.ts'
import { lotRowsById } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { appendMoves, type Entry, entryOf } from './append.ts'
import { asField } from './asField.ts'
import { costPiece, followCosts } from './costs.ts'
import { bottlesOf, countedProduct, holdingOfRow, shelfDay } from './countedProducts.ts'
import { dilutionOf } from './dilutions.ts'
import type { MixInput } from './inputs.ts'
import { nextLotNumber } from './receive.ts'
import { type StockChangeView, stockNow } from './stockChanges.ts'

/**
 * A batch is mixed: its share leaves a bottle of the concentrate, and it stands on the shelf as a bottle of its own, good
 * for its own days and never longer than what it was made of. It costs what went into it.
 */
export async function mixBatch(desk: Desk, input: MixInput): Promise<StockChangeView> {
  await followCosts(desk)
  return act(desk, async (tx, audit, at) => {
    const { productId, amount } = input
    const ground = await shelfDay(tx, at)
    const product = await countedProduct(tx, productId)
    const share = await dilutionOf(tx, productId)
    const concentrate = await countedProduct(tx, share.concentrateId)
    const madeCenti = centiOf(amount)
    const bottles = await bottlesOf(tx, concentrate.id)
    const number = await nextLotNumber(tx)
    const plan = await asField('', () =>
      planDraw({
        productId: concentrate.id,
        unit: concentrate.unit,
        holdings: bottles.map(holdingOfRow),
        needCenti: madeCenti > 0 ? concentrateFor(madeCenti, share) : madeCenti,
        day: ground.day,
        at,
        by: desk.who,
        stepId: null,
        jobId: null,
        why: say('mixed into no. {number} of {name}', { number, name: product.name }),
      }),
    )
    if (plan.opens.length > 0)
      await tx.lot.updateMany({
        where: { id: { in: [...plan.opens] } },
        data: { openedOn: ground.date, lifeAfterOpeningDays: concentrate.lifeAfterOpeningDays },
      })
    await appendMoves(
      tx,
      plan.moves.map(move => ({ ...entryOf(move), kind: 'mix' })),
    )
    const from = await lotRowsById(
      tx,
      plan.moves.map(move => move.lotId),
    )
    const batches = new Set(from.map(row => row.batch))
    const lastDays = from.flatMap(row => holdingOfRow(row).lastDay ?? [])
    const lot = await tx.lot.create({
      data: {
        number,
        productId,
        batch: batches.size === 1 ? (from[0]?.batch ?? null) : null,
        receivedOn: ground.date,
        expiresOn: lastDays.length > 0 ? dateOfDay(Math.min(...lastDays)) : null,
        openedOn: ground.date,
        lifeAfterOpeningDays: share.lifeDays,
        waterParts: share.waterParts,
        mixedFrom: toJson(from.map(row => row.number)),
      },
    })
    const receipt: Entry = {
      lotId: lot.id,
      productId,
      kind: 'receipt',
      centi: madeCenti,
      at,
      by: desk.who,
      why: say('mixed {share}', { share: shareWords(share) }),
      jobId: null,
      costMinor: await costOfMixing(tx, plan.moves.length),
    }
    await appendMoves(tx, [receipt])
    const takenCenti = -plan.moves.reduce((sum, move) => sum + move.centi, 0)
    audit({
      act: 'mixed',
      entity: 'stock',
      entityId: productId,
      detail: { lotId: lot.id, centi: madeCenti, concentrateId: concentrate.id, takenCenti },
    })
    const words = say(
      'mixed {madeCenti} of {name} as no. {number}: {takenCenti} of {name2}, {madeCenti2} of water',
      {
        madeCenti: amountWords(madeCenti, product.unit),
        name: product.name,
        number,
        takenCenti: amountWords(takenCenti, concentrate.unit),
        name2: concentrate.name,
        madeCenti2: amountWords(madeCenti - takenCenti, product.unit),
      },
    )
    return stockNow(tx, ground, product, [words])
  })
}

/** What the last moves cost by average: they are costed at once, with whatever is not costed yet. */
async function costOfMixing(tx: Tx, moves: number): Promise<number> {
  await costPiece(tx)
  const rows = await tx.stockMove.findMany({ orderBy: { seq: 'desc' }, take: moves, select: { seq: true } })
  const costs = await costsOf(
    tx,
    rows.map(row => row.seq),
  )
  return -costs.reduce((sum, cost) => sum + cost.averageMinor, 0) || 0
}
