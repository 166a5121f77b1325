/** Changes of stock by hand: a bottle opened, counted, thrown away, sent back, a move put right. */

import { dateOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { amountWords, centiOf, countMove, discardWords, openLot, usableOn } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { type LotRow, lotRows, lotRowsById } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { appendMoves, type Entry } from './append.ts'
import { asField } from './asField.ts'
import { type Counted, countedProduct, holdingOfRow, type ShelfDay, shelfDay } from './countedProducts.ts'
import type { BottleInput, CountInput, TakeInput, WasteInput } from './inputs.ts'
import { amountsOf, lotViews } from './lotViews.ts'
import { isUnconfirmed } from './stepsToConfirm.ts'
import { contentByWeight } from './weigh.ts'

interface Bottle {
  tx: Tx
  audit: Audit
  ground: ShelfDay
  product: Counted
  row: LotRow
}

/** Does something with one bottle in one transaction, and answers with the product as it then stands. */
function withBottle(
  desk: Desk,
  { productId, lotId }: BottleInput,
  work: (bottle: Bottle) => Promise<string>,
): Promise<StockChangeView> {
  return act(desk, async (tx, audit) => {
    const ground = await shelfDay(tx, desk.now())
    const product = await countedProduct(tx, productId)
    const row = (await lotRowsById(tx, [lotId]))[0]
    if (!row || row.productId !== productId)
      refuse('missing', { lotId }, say('This bottle is not on the shelf; look at the product again.'))
    const words = await asField('', () => work({ tx, audit, ground, product, row }))
    return stockNow(tx, ground, product, [words])
  })
}

export type StockChangeView = Awaited<ReturnType<typeof stockNow>>

/** A product as it stands, after a change said in `words`. */
export async function stockNow(tx: Tx, { day }: ShelfDay, product: Counted, words: string[]) {
  const rows = await lotRows(tx, [product.id])
  return {
    productId: product.id,
    onHand: amountsOf(rows, day).onHand,
    lots: lotViews(rows, product.unit, day),
    words,
  }
}

/** What a move by hand has in common. */
function entry(desk: Desk, { product, row }: Bottle, kind: Entry['kind'], centi: number, why: string): Entry {
  return {
    lotId: row.id,
    productId: product.id,
    kind,
    centi,
    at: desk.now(),
    by: desk.who,
    why,
    jobId: null,
    costMinor: null,
  }
}

/** A sealed bottle is opened: from now on its own date counts too. */
export function openBottle(desk: Desk, input: BottleInput): Promise<StockChangeView> {
  return withBottle(desk, input, async ({ tx, audit, ground, product, row }) => {
    const { openedOn, lifeAfterOpeningDays } = openLot(
      row,
      dateOfDay(ground.day),
      product.lifeAfterOpeningDays,
    )
    await tx.lot.update({ where: { id: row.id }, data: { openedOn, lifeAfterOpeningDays } })
    audit({ act: 'opened', entity: 'stock', entityId: product.id, detail: { lotId: row.id, openedOn } })
    return say('opened no. {number} of {name}', { number: row.number, name: product.name })
  })
}

/** What a count found; where it differs from the ledger, the difference becomes a move. */
export function countBottle(desk: Desk, input: CountInput): Promise<StockChangeView> {
  return withBottle(desk, input, async bottle => {
    const { tx, audit, product, row } = bottle
    const countedCenti = input.weighed
      ? contentByWeight(product, row, input.weighed.grossG)
      : centiOf(input.counted ?? Number.NaN, 'counted')
    const draft = countMove(row.centi, {
      lotId: row.id,
      productId: product.id,
      countedCenti,
      at: desk.now(),
      by: desk.who,
      why: checkNote(input.reason, 'reason', 200),
    })
    if (draft) await appendMoves(tx, [entry(desk, bottle, 'count', draft.centi, draft.why ?? '')])
    audit({
      act: 'counted',
      entity: 'stock',
      entityId: product.id,
      detail: { lotId: row.id, countedCenti, beforeCenti: row.centi },
    })
    const now = amountWords(countedCenti, product.unit)
    const unconfirmed = (await isUnconfirmed(tx, product.id, desk.now()))
      ? say(
          '; finished steps that used it are still to be confirmed, and that takes it off again: count it once more after',
        )
      : ''
    const { number } = row
    const { name } = product
    return draft
      ? say('no. {number} of {name} counted: {now}, the ledger had {before}{unconfirmed}', {
          number,
          name,
          now,
          before: amountWords(row.centi, product.unit),
          unconfirmed,
        })
      : say('no. {number} of {name} counted: {now}, as the ledger says{unconfirmed}', {
          number,
          name,
          now,
          unconfirmed,
        })
  })
}

/** Something is thrown away: past its date, spilt, gone off. */
export function wasteStock(desk: Desk, { discard, reason, ...input }: WasteInput): Promise<StockChangeView> {
  return takeAway(desk, { ...input, reason: discardWords(discard, reason), discard }, 'waste')
}

/** Something goes back to the supplier. */
export function returnStock(desk: Desk, input: TakeInput): Promise<StockChangeView> {
  return takeAway(desk, input, 'return')
}

/** Something is used that no booked step asks for: a walk-in, a test panel, the shop's own car. */
export function takeStock(desk: Desk, input: TakeInput): Promise<StockChangeView> {
  return takeAway(desk, input, 'use')
}

/** As the history keeps it. */
const takingActs = { waste: 'thrown away', return: 'sent back', use: 'used' } as const

function takeAway(desk: Desk, input: TakeInput & Partial<WasteInput>, kind: keyof typeof takingActs) {
  return withBottle(desk, input, async bottle => {
    const { tx, audit, product, row, ground } = bottle
    const centi = centiOf(input.amount)
    if (centi <= 0)
      refuse(
        'amount-not-positive',
        { amount: input.amount },
        say('{amount} is not an amount to take away; give more than nothing.', { amount: input.amount }),
      )
    if (kind === 'use' && row.centi > 0 && !usableOn(holdingOfRow(row), ground.day))
      refuse(
        'past-date',
        { lotId: row.id },
        say('No. {number} is past its date: use another, or record it as thrown away.', {
          number: row.number,
        }),
      )
    const move = entry(desk, bottle, kind, -centi, checkNote(input.reason, 'reason', 200))
    await appendMoves(tx, [{ ...move, discard: input.discard }])
    if (kind === 'use' && row.openedOn === null)
      await tx.lot.update({
        where: { id: row.id },
        data: { openedOn: ground.date, lifeAfterOpeningDays: product.lifeAfterOpeningDays },
      })
    audit({
      act: takingActs[kind],
      entity: 'stock',
      entityId: product.id,
      detail: { lotId: row.id, centi, reason: input.reason },
    })
    return say(
      '{amount} of {name} from no. {number} {kind, select, waste {thrown away} return {sent back} other {used}}',
      { amount: amountWords(centi, product.unit), name: product.name, number: row.number, kind },
    )
  })
}
