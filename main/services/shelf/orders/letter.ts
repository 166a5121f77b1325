/** The letters that go with an order: the order itself, and the question where it is. */

import { dateOf, dayWords, longDayWords } from '../../../domain/calendar/index.ts'
import { say } from '../../../domain/language/index.ts'
import { moneyWords } from '../../../domain/money/index.ts'
import type { Tx } from '../../../store/store.ts'
import type { Desk } from '../../desk/desk.ts'
import { noSenderWords, senderOf } from '../../desk/mailSettings.ts'
import { shopOf } from '../../desk/shopView.ts'
import { type ShelfDay, shelfDay } from '../countedProducts.ts'
import { type OrderView, orderRow, orderView } from './orderViews.ts'

export type DraftMessageView = Awaited<ReturnType<typeof draftMessage>>

/** What would be written to the supplier about an order, for the person to change before it is sent. */
export async function draftMessage(desk: Desk, input: { id: string; kind: 'order' | 'chase' }) {
  const tx = desk.store.read
  const row = await orderRow(tx, input.id)
  const ground = await shelfDay(tx, desk.now())
  const letter = await letterFor(tx, orderView(row, ground), input.kind, ground)
  const sender = await senderOf(tx, desk.store)
  return {
    orderId: row.id,
    version: row.version,
    kind: input.kind,
    to: row.supplier.email,
    ...letter,
    /** What stands in the way of sending it by e-mail, in words; null: nothing. */
    cannot:
      row.supplier.email === null
        ? say('No e-mail address of {name} is entered.', { name: row.supplier.name })
        : sender === null
          ? say(noSenderWords)
          : null,
  }
}

export async function letterFor(
  tx: Tx,
  order: OrderView,
  kind: 'order' | 'chase',
  ground: ShelfDay,
): Promise<{ subject: string; text: string }> {
  const shop = await shopOf(tx)
  return kind === 'order' ? orderLetter(order, shop.name) : chaseLetter(order, shop.name, ground)
}

function orderLetter(order: OrderView, shopName: string): { subject: string; text: string } {
  const lines = order.lines.map(line => {
    const pack =
      line.containersPerPack === 1 ? line.sizeLabel : `${line.containersPerPack} × ${line.sizeLabel}`
    const article = line.article ? ` (${line.article})` : ''
    return `- ${line.packs} × ${pack} ${line.productName}${article}: ${moneyWords(line.lineMinor, order.currency)}`
  })
  return {
    subject: say('Purchase order {number} from {shopName}', { number: order.number, shopName }),
    text: [
      say('Dear {supplierName},', { supplierName: order.supplierName }),
      '',
      say('please find our purchase order {number} attached:', { number: order.number }),
      '',
      ...lines,
      '',
      say('Goods {goodsMinor}, carriage {carriageMinor}, together {totalMinor}.', {
        goodsMinor: moneyWords(order.goodsMinor, order.currency),
        carriageMinor: moneyWords(order.carriageMinor, order.currency),
        totalMinor: moneyWords(order.totalMinor, order.currency),
      }),
      ...(order.note ? ['', order.note] : []),
      '',
      say('Please confirm it and tell us the day of delivery.'),
      '',
      say('Kind regards'),
      shopName,
      '',
    ].join('\n'),
  }
}

function chaseLetter(
  order: OrderView,
  shopName: string,
  ground: ShelfDay,
): { subject: string; text: string } {
  const open = order.lines
    .filter(line => line.openContainers > 0)
    .map(line => `- ${line.openContainers} × ${line.sizeLabel} ${line.productName}`)
  const { number, sentAt, expectedOn } = order
  const due =
    expectedOn === null
      ? []
      : [say('It was expected on {expectedOn}.', { expectedOn: dateWords(expectedOn) })]
  return {
    subject: say('Purchase order {number} from {shopName}: when will it be here?', { number, shopName }),
    text: [
      say('Dear {supplierName},', { supplierName: order.supplierName }),
      '',
      sentAt === null
        ? say('from our purchase order {number} this is still open:', { number })
        : say('from our purchase order {number} of {day} this is still open:', {
            number,
            day: dayWords(dateOf(sentAt, ground.zone)),
          }),
      '',
      ...open,
      '',
      [...due, say('Please tell us on which day we can count on it.')].join(' '),
      '',
      say('Kind regards'),
      shopName,
      '',
    ].join('\n'),
  }
}

/** `Monday 20 April 2026` */
export function dateWords(date: string): string {
  return longDayWords(date)
}
