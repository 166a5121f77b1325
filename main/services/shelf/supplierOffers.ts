import { refuse } from '../../domain/refusal.ts'
import { checkOffer, type Offer, type PriceBreak, unitsOf } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { SupplierOffer as OfferRow, Supplier as SupplierRow } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import type { SupplierOfferView } from './views/product.ts'

type WithSize = OfferRow & {
  size: { label: string; labelCenti: number; measuredCenti: number | null }
  supplier: SupplierRow
}

export const withSize = { size: true, supplier: true } as const

/** An offer's row as the domain reads it; a pack holds what its containers measure. */
export function offerOf(row: WithSize): Offer {
  return {
    ...row,
    packCenti: (row.size.measuredCenti ?? row.size.labelCenti) * row.containersPerPack,
    breaks: row.breaks as unknown as PriceBreak[],
  }
}

/** The offers in use of these products (or of all), preferred ones first. */
export function offerRows(tx: Tx, productIds?: readonly string[]): Promise<WithSize[]> {
  return tx.supplierOffer.findMany({
    where: { archivedAt: null, ...(productIds && { productId: { in: [...productIds] } }) },
    include: withSize,
    orderBy: [{ preferred: 'desc' }, { id: 'asc' }],
  })
}

export function offerView(row: WithSize): SupplierOfferView {
  const offer = offerOf(row)
  return {
    id: row.id,
    version: row.version,
    supplierId: row.supplierId,
    supplierName: row.supplier.name,
    sizeId: row.sizeId,
    sizeLabel: row.size.label,
    article: row.article,
    containersPerPack: row.containersPerPack,
    packAmount: unitsOf(offer.packCenti),
    breaks: offer.breaks.map(each => ({ ...each })),
    shelfLifeDays: row.shelfLifeDays,
    preferred: row.preferred,
    per100Minor: offer.breaks.map(each => per100Minor(each.packPriceMinor, offer.packCenti)),
    archivedAt: row.archivedAt,
  }
}

/** The price of 100 units, in minor units with two decimals: what compares a small bottle with a large one. */
export function per100Minor(priceMinor: number, centi: number): number {
  return Math.round((priceMinor * 100 * 100 * 100) / centi) / 100
}

export interface OfferInput {
  id?: string | undefined
  version?: number | undefined
  supplierId: string
  productId: string
  sizeId: string
  article: string
  containersPerPack: number
  breaks: PriceBreak[]
  shelfLifeDays: number | null
  preferred: boolean
}

/** Adds a way to buy a product, or changes one. A product has one preferred way: the others step back. */
export function saveOffer(desk: Desk, input: OfferInput): Promise<{ id: string }> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { id: asked, version, supplierId, productId, sizeId, breaks, ...rest } = input
    const size = await tx.containerSize.findUnique({ where: { id: sizeId } })
    if (!size || size.productId !== productId || size.archivedAt !== null)
      refuse('missing', { sizeId }, 'Choose one of the product’s sizes; add it first where it lacks.')
    const supplier = await tx.supplier.findUnique({ where: { id: supplierId } })
    if (!supplier || supplier.archivedAt !== null)
      refuse('missing', { supplierId }, 'This supplier is not in use; choose another.')
    checkInput(input)
    const data = {
      ...rest,
      article: checkNote(input.article, 'article', 60),
      breaks: breaks.map(each => ({ ...each })),
    }
    checkOffer({
      ...input,
      packCenti: (size.measuredCenti ?? size.labelCenti) * input.containersPerPack,
    })
    if (input.preferred)
      await tx.supplierOffer.updateMany({
        where: { productId, preferred: true, NOT: { id: asked ?? '' } },
        data: { preferred: false, version: { increment: 1 } },
      })
    if (asked === undefined) {
      const { id } = await tx.supplierOffer.create({ data: { ...data, supplierId, productId, sizeId } })
      audit({
        act: 'offer added',
        entity: 'stock',
        entityId: productId,
        detail: { supplierId, sizeId, ...data },
      })
      return { id }
    }
    const before = await tx.supplierOffer.findUnique({ where: { id: asked } })
    const { count } = await tx.supplierOffer.updateMany({
      where: { id: asked, productId, version: version ?? 0 },
      data: { ...data, supplierId, sizeId, version: { increment: 1 } },
    })
    assertFresh(count, 'offer', asked)
    audit({
      act: 'offer changed',
      entity: 'stock',
      entityId: productId,
      detail: changesBetween(before!, data),
    })
    return { id: asked }
  })
}

function checkInput({ containersPerPack, shelfLifeDays }: OfferInput): void {
  if (!Number.isInteger(containersPerPack) || containersPerPack < 1 || containersPerPack > 1000)
    refuse(
      'count-bad',
      { containersPerPack },
      `A pack of ${containersPerPack} containers is none; give a whole number from 1.`,
    )
  if (shelfLifeDays !== null && !(Number.isInteger(shelfLifeDays) && shelfLifeDays >= 1))
    refuse(
      'life-bad',
      { shelfLifeDays },
      `${shelfLifeDays} days from delivery to the printed date is none; give 1 or more, or leave it empty.`,
    )
}

/** Takes an offer out of use. */
export function archiveOffer(desk: Desk, input: { id: string; version: number }): Promise<void> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { count } = await tx.supplierOffer.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'offer', input.id)
    const { productId } = await tx.supplierOffer.findUniqueOrThrow({ where: { id: input.id } })
    audit({ act: 'offer archived', entity: 'stock', entityId: productId, detail: { offerId: input.id } })
  })
}
