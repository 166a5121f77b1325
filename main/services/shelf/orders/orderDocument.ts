import { orderPdf } from '../../../documents/orderPdf.ts'
import { dateOf } from '../../../domain/calendar/index.ts'
import { say } from '../../../domain/language/index.ts'
import { plainMoney } from '../../../domain/money/index.ts'
import { showPhone } from '../../../domain/vehicle/index.ts'
import type { Tx } from '../../../store/store.ts'
import type { Desk } from '../../desk/desk.ts'
import { letterheadOf } from '../../desk/issuer.ts'
import { shopOf } from '../../desk/shopView.ts'
import { shelfDay } from '../countedProducts.ts'
import { dateWords } from './letter.ts'
import { type OrderRow, orderRow, orderView } from './orderViews.ts'

export interface DocumentFile {
  name: string
  type: string
  bytes: Uint8Array<ArrayBuffer>
}

/** The PDF of an order as it now stands. */
export async function orderDocument(desk: Desk, input: { id: string }): Promise<DocumentFile> {
  const tx = desk.store.read
  return documentOf(tx, await orderRow(tx, input.id), desk.now())
}

/** An order's PDF from its row; a sent one bears the day it was sent. */
export async function documentOf(tx: Tx, row: OrderRow, nowAt: number): Promise<DocumentFile> {
  const shop = await shopOf(tx)
  const at = row.sentAt ?? nowAt
  const ground = await shelfDay(tx, at)
  const order = orderView(row, ground)
  const money = (minor: number) => plainMoney(minor, ground.currency)
  const date = dateOf(at, ground.zone)
  const bytes = await orderPdf({
    number: order.number,
    dayWords: dateWords(date),
    at,
    ...(await letterheadOf(tx)),
    supplier: {
      name: row.supplier.name,
      email: row.supplier.email,
      phone: row.supplier.phone === null ? null : showPhone(row.supplier.phone, shop.country),
      account: row.supplier.account,
    },
    lines: order.lines.map(line => ({
      article: line.article,
      product: line.productName,
      pack: line.containersPerPack === 1 ? line.sizeLabel : `${line.containersPerPack} × ${line.sizeLabel}`,
      packs: String(line.packs),
      packPrice: money(line.packPriceMinor),
      amount: money(line.lineMinor),
    })),
    goods: money(order.goodsMinor),
    carriage: money(order.carriageMinor),
    total: money(order.totalMinor),
    currency: order.currency,
    note: order.note,
    expectedWords:
      order.expectedOn === null ? null : say('by {expectedOn}', { expectedOn: dateWords(order.expectedOn) }),
  })
  return { name: `order-${order.number}.pdf`, type: 'application/pdf', bytes }
}
