/** The letters that go with an order: the order itself, and the question where it is. */
import { dateOf, weekdayName } from '../../../domain/calendar/index.ts'
import type { Tx } from '../../../store/store.ts'
import type { Desk } from '../../desk/desk.ts'
import { noSenderWords, senderOf } from '../../desk/mailSettings.ts'
import { shopOf } from '../../desk/shopView.ts'
import { type ShelfDay, shelfDay } from '../countedProducts.ts'
import { dayWords } from '../lotViews.ts'
import { moneyWords } from '../words.ts'
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
        ? `No e-mail address of ${row.supplier.name} is entered.`
        : sender === null
          ? noSenderWords
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
    subject: `Purchase order ${order.number} from ${shopName}`,
    text: [
      `Dear ${order.supplierName},`,
      '',
      `please find our purchase order ${order.number} attached:`,
      '',
      ...lines,
      '',
      `Goods ${moneyWords(order.goodsMinor, order.currency)}, carriage ${moneyWords(order.carriageMinor, order.currency)}, ` +
        `together ${moneyWords(order.totalMinor, order.currency)}.`,
      ...(order.note ? ['', order.note] : []),
      '',
      'Please confirm it and tell us the day of delivery.',
      '',
      'Kind regards',
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
  const sent = order.sentAt === null ? '' : ` of ${dayWords(dateOf(order.sentAt, ground.zone))}`
  const due = order.expectedOn === null ? '' : ` It was expected on ${dateWords(order.expectedOn)}.`
  return {
    subject: `Purchase order ${order.number} from ${shopName}: when will it be here?`,
    text: [
      `Dear ${order.supplierName},`,
      '',
      `from our purchase order ${order.number}${sent} this is still open:`,
      '',
      ...open,
      '',
      `${due.trim()} Please tell us on which day we can count on it.`.trim(),
      '',
      'Kind regards',
      shopName,
      '',
    ].join('\n'),
  }
}

/** `Monday 20 April 2026` */
export function dateWords(date: string): string {
  return `${weekdayName(date)} ${dayWords(date)}`
}
