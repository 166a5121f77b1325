/** What the advices come to: one order a supplier, as proposals and as drafts. */
import { say } from '../../../domain/language/index.ts'
import {
  type Advised,
  type OrderLine,
  type ProposedOrder,
  proposeOrders,
  unitsOf,
} from '../../../domain/shelf/index.ts'
import type { Tx } from '../../../store/store.ts'
import { act, type Desk } from '../../desk/desk.ts'
import { adviceView } from '../adviceViews.ts'
import { type ProductAhead, type ShelfAhead, shelfAhead } from '../ahead.ts'
import { nearDayWords } from '../lotViews.ts'
import type { Buying } from '../underWay.ts'
import { claimDraft, newDraft, writeLines } from './draft.ts'
import { dueDays } from './dueDays.ts'
import type { LineInput, ProposeInput, WantedLine } from './inputs.ts'
import { conditionNotes, type OrderView, orderNow, orderRows } from './orderViews.ts'

/** Today's orders by the advices of the whole shelf. */
export function ordersOf(shelf: ShelfAhead): ProposedOrder[] {
  const advised = [...shelf.products.values()].flatMap(({ advice, buying, waitingCenti }): Advised[] =>
    advice && buying && waitingCenti === 0 ? [{ advice, offer: buying.offer }] : [],
  )
  const suppliers = new Map(
    [...shelf.products.values()].flatMap(({ buying }) =>
      buying ? [[buying.supplier.id, buying.supplier] as const] : [],
    ),
  )
  return proposeOrders(advised, [...suppliers.values()])
}

/** The line each product has in today's proposed orders. */
export function linesByProduct(orders: readonly ProposedOrder[]): Map<string, OrderLine> {
  return new Map(orders.flatMap(order => order.lines.map(line => [line.productId, line] as const)))
}

/** What to order from one supplier, before it is a draft. */
export type ProposedOrderView = Awaited<ReturnType<typeof proposedViews>>[number]

/** The proposals for the screen. */
export async function proposedViews(tx: Tx, shelf: ShelfAhead, orders: readonly ProposedOrder[]) {
  if (orders.length === 0) return []
  const drafts = await orderRows(tx, { status: { in: ['draft'] } })
  const rows = await tx.supplierOffer.findMany({
    where: { archivedAt: null },
    include: { size: true, supplier: { select: { email: true } } },
  })
  const offers = new Map(rows.map(row => [row.id, row]))
  return orders.flatMap(order => {
    const bought = order.lines.flatMap(line => boughtAs(shelf, line))
    const [first] = bought
    if (!first) return []
    const { supplier, lead } = first.buying
    const due = dueDays(supplier, lead, shelf.ground.nowAt, shelf.ground.zone)
    return {
      supplierId: supplier.id,
      supplierName: supplier.name,
      supplierEmail: offers.get(first.buying.offer.id)?.supplier.email ?? null,
      lines: bought.map(each => lineView(each, offers)),
      goodsMinor: order.goodsMinor,
      carriageMinor: order.carriageMinor,
      totalMinor: order.totalMinor,
      currency: shelf.ground.currency,
      /** If sent now: on average, and the day by which nine in ten are here. */
      expectedOn: due.expectedOn,
      lateFromOn: due.lateFromOn,
      /** In words: under the minimum order, what would make carriage free, order before the cut-off. */
      notes: [
        ...conditionNotes(supplier, order.goodsMinor, shelf.ground.currency),
        ...(due.placedOn > shelf.ground.date
          ? [
              say('Sent now, it counts for {placedOn}: past the cut-off of today.', {
                placedOn: nearDayWords(due.placedOn, shelf.ground.day),
              }),
            ]
          : []),
      ],
      /** A draft for this supplier that is already there and to which the lines would be added. */
      draftId: drafts.find(draft => draft.supplierId === supplier.id)?.id ?? null,
    }
  })
}

interface BoughtLine {
  line: OrderLine
  of: ProductAhead
  buying: Buying
}

/** A proposed line with its product and the way it is bought. */
function boughtAs({ products }: ShelfAhead, line: OrderLine): BoughtLine[] {
  const of = products.get(line.productId)
  return of?.buying ? [{ line, of, buying: of.buying }] : []
}

function lineView(
  { line, of, buying: { offer } }: BoughtLine,
  offers: ReadonlyMap<string, { article: string; size: { label: string } }>,
) {
  const row = offers.get(offer.id)
  return {
    offerId: offer.id,
    productId: line.productId,
    productName: of.product.name,
    unit: of.product.unit,
    sizeLabel: row?.size.label ?? '',
    article: row?.article ?? '',
    packs: line.packs,
    packAmount: unitsOf(offer.packCenti),
    containersPerPack: offer.containersPerPack,
    packPriceMinor: line.packPriceMinor,
    lineMinor: line.amountMinor,
    why: adviceView(of, line).words,
  }
}

/** Makes drafts of what is advised today, or of these lines: one a supplier, added to the draft that is there. */
export async function proposeDrafts(desk: Desk, input: ProposeInput = {}): Promise<OrderView[]> {
  const lines = input.lines ?? (await advisedLines(desk))
  return act(desk, async (tx, audit) => {
    const offers = await tx.supplierOffer.findMany({
      where: { id: { in: lines.map(line => line.offerId) } },
      select: { id: true, supplierId: true, productId: true, sizeId: true },
    })
    const byId = new Map(offers.map(offer => [offer.id, offer]))
    const groups = Map.groupBy(lines, line => byId.get(line.offerId)?.supplierId ?? '')
    const drafts = await orderRows(tx, { status: { in: ['draft'] } })
    const views: OrderView[] = []
    for (const [supplierId, own] of groups) {
      const draft = drafts.find(each => each.supplierId === supplierId)
      const id = draft?.id ?? (await newDraft(tx, audit, desk, supplierId))
      if (draft) await claimDraft(tx, id, draft.version)
      // A product that already stands on the draft is not ordered twice: the newer advice replaces it.
      const renewed = own.flatMap(line => byId.get(line.offerId) ?? [])
      const kept = (draft?.lines ?? []).filter(
        line => !renewed.some(each => each.productId === line.productId && each.sizeId === line.sizeId),
      )
      const all: LineInput[] = [
        ...kept.map(line => ({ id: line.id, packs: line.packs, packPriceMinor: line.packPriceMinor })),
        ...own,
      ]
      await writeLines(tx, id, supplierId, all)
      audit({ act: 'order proposed', entity: 'order', entityId: id, detail: { lines: all.length } })
      views.push(await orderNow(tx, id, desk.now()))
    }
    return views
  })
}

async function advisedLines(desk: Desk): Promise<WantedLine[]> {
  const shelf = await shelfAhead(desk, desk.store.read)
  return ordersOf(shelf).flatMap(order =>
    order.lines
      .flatMap(line => boughtAs(shelf, line))
      .map(({ line, of, buying }) => ({
        offerId: buying.offer.id,
        packs: line.packs,
        why: adviceView(of, line).words,
      })),
  )
}
