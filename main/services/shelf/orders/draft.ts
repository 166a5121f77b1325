/** Orders before they are sent: written, changed, called off. */
import { say } from '../../../domain/language/index.ts'
import { checkMinor } from '../../../domain/money/index.ts'
import { found, refuse } from '../../../domain/refusal.ts'
import { packPriceMinor } from '../../../domain/shelf/index.ts'
import { checkNote } from '../../../domain/shop/index.ts'
import { assertFresh, type Tx } from '../../../store/store.ts'
import { type Audit, act, type Desk } from '../../desk/desk.ts'
import { offerOf, offerRows, withSize } from '../supplierOffers.ts'
import type { CancelInput, LineInput, OrderInput } from './inputs.ts'
import { carriageFor, goodsOf, type OrderView, orderNow, orderRow } from './orderViews.ts'

/** Writes a draft, or changes one. Prices follow the supplier's list unless somebody knows better. */
export function saveOrder(desk: Desk, input: OrderInput): Promise<OrderView> {
  return act(desk, async (tx, audit) => {
    const id = input.id ?? (await newDraft(tx, audit, desk, input.supplierId))
    if (input.id !== undefined) await claimDraft(tx, input.id, input.version ?? 0)
    await tx.purchaseOrder.update({ where: { id }, data: { note: checkNote(input.note, 'note', 1_000) } })
    await writeLines(tx, id, input.supplierId, input.lines)
    audit({ act: 'order written', entity: 'order', entityId: id, detail: { lines: input.lines.length } })
    return orderNow(tx, id, desk.now())
  })
}

/** A new, empty draft for a supplier; returns its id. */
export async function newDraft(tx: Tx, audit: Audit, desk: Desk, supplierId: string): Promise<string> {
  const supplier = await tx.supplier.findUnique({ where: { id: supplierId } })
  if (!supplier || supplier.archivedAt !== null)
    refuse('missing', { supplierId }, say('This supplier is not in use; choose another.'))
  const number = ((await tx.purchaseOrder.aggregate({ _max: { number: true } }))._max.number ?? 0) + 1
  const { id } = await tx.purchaseOrder.create({
    data: { number, supplierId, status: 'draft', createdAt: desk.now() },
  })
  audit({ act: 'order begun', entity: 'order', entityId: id, detail: { number, supplierId } })
  return id
}

/** Takes a draft for one change; refused where it was sent or changed meanwhile. */
export async function claimDraft(tx: Tx, id: string, version: number): Promise<void> {
  const row = await orderRow(tx, id)
  if (row.status !== 'draft')
    refuse(
      'not-draft',
      { id },
      row.status === 'cancelled'
        ? say('Order {number} has been called off; it is not changed any more.', { number: row.number })
        : say('Order {number} has been sent; it is not changed any more.', { number: row.number }),
    )
  const { count } = await tx.purchaseOrder.updateMany({
    where: { id, version },
    data: { version: { increment: 1 } },
  })
  assertFresh(count, 'order', id)
}

/** Puts these lines in place of those a draft has, and its carriage with them. */
export async function writeLines(
  tx: Tx,
  orderId: string,
  supplierId: string,
  lines: readonly LineInput[],
): Promise<void> {
  const before = new Map((await orderRow(tx, orderId)).lines.map(line => [line.id, line]))
  const rows = []
  for (const [i, line] of lines.entries()) {
    const field = `lines.${i}`
    if (!Number.isInteger(line.packs) || line.packs < 1 || line.packs > 10_000)
      refuse(
        'count-bad',
        { [`${field}.packs`]: line.packs },
        say('{packs} packs cannot be ordered; give a whole number from 1, or drop the line.', {
          packs: line.packs,
        }),
      )
    const old = line.id === undefined ? undefined : before.get(line.id)
    const offer = await offerFor(tx, supplierId, line, old)
    const gone = say('This supplier does not sell it any more.')
    const bought = found(offer ?? old, { [`${field}.offerId`]: line.offerId }, gone)
    const listed = offer ? packPriceMinor(offer.breaks, line.packs) : old?.packPriceMinor
    const price = checkMinor(line.packPriceMinor ?? listed ?? 0, `${field}.packPriceMinor`)
    if (price < 0) refuse('cost-bad', { [`${field}.packPriceMinor`]: price }, say('A pack costs 0 or more.'))
    rows.push({
      orderId,
      position: i,
      packs: line.packs,
      packPriceMinor: price,
      why: line.why ?? (old?.why as string[] | undefined) ?? [],
      productId: bought.productId,
      sizeId: bought.sizeId,
      article: bought.article,
      packCenti: bought.packCenti,
      containersPerPack: bought.containersPerPack,
    })
  }
  await tx.purchaseOrderLine.deleteMany({ where: { orderId } })
  await tx.purchaseOrderLine.createMany({ data: rows })
  const order = await orderRow(tx, orderId)
  await tx.purchaseOrder.update({
    where: { id: orderId },
    data: { carriageMinor: carriageFor(order.supplier, goodsOf(order)) },
  })
}

async function offerFor(
  tx: Tx,
  supplierId: string,
  line: LineInput,
  old: { productId: string; sizeId: string } | undefined,
) {
  if (line.offerId !== undefined) {
    const row = await tx.supplierOffer.findUnique({ where: { id: line.offerId }, include: withSize })
    return row && row.supplierId === supplierId && row.archivedAt === null
      ? { ...offerOf(row), article: row.article }
      : undefined
  }
  if (!old) return undefined
  const row = (await offerRows(tx, [old.productId])).find(
    each => each.supplierId === supplierId && each.sizeId === old.sizeId,
  )
  return row && { ...offerOf(row), article: row.article }
}

/** Calls an order off: a draft is dropped, a sent one is marked so; the supplier is told by a person. */
export function cancelOrder(desk: Desk, { id, version, reason }: CancelInput): Promise<OrderView> {
  return act(desk, async (tx, audit) => {
    const row = await orderRow(tx, id)
    if (row.status === 'received' || row.status === 'cancelled')
      refuse('order-closed', { id }, say('Order {number} is closed already.', { number: row.number }))
    const why = checkNote(reason, 'reason', 200)
    if (why === '' && row.status !== 'draft')
      refuse('why-missing', { reason }, say('Say why a sent order is called off.'))
    const { count } = await tx.purchaseOrder.updateMany({
      where: { id, version },
      data: { status: 'cancelled', closedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'order', id)
    audit({
      act: 'order called off',
      entity: 'order',
      entityId: id,
      detail: { was: row.status, reason: why },
    })
    return orderNow(tx, id, desk.now())
  })
}
