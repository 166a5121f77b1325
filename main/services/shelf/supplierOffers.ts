import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkOffer, type Offer, type PriceBreak, unitsOf } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { SupplierOffer as OfferRow, Supplier as SupplierRow } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowAccepted } from '../desk/inputs.ts'
import { archiveRow, type RowSeen, restoreRow, saveRow } from '../desk/keep.ts'
import type { OfferInput } from './inputs.ts'
import { offerLines, openOrderLines } from './stillUsed.ts'

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
    breaks: fromJson<PriceBreak[]>(row.breaks),
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

export type SupplierOfferView = ReturnType<typeof offerView>

export function offerView(row: WithSize) {
  const { breaks, packCenti } = offerOf(row)
  const { size, supplier, productId: _, ...offer } = row
  return {
    ...offer,
    supplierName: supplier.name,
    sizeLabel: size.label,
    packAmount: unitsOf(packCenti),
    breaks: [...breaks],
    /** Price of 100 units (100 ml) at each break: compares sizes. */
    per100Minor: breaks.map(each => per100Minor(each.packPriceMinor, packCenti)),
  }
}

/** The price of 100 units, in minor units with two decimals: what compares a small bottle with a large one. */
export function per100Minor(priceMinor: number, centi: number): number {
  return Math.round((priceMinor * 100 * 100 * 100) / centi) / 100
}

/** Adds a way to buy a product, or changes one. A product has one preferred way: the others step back. */
export function saveOffer(desk: Desk, input: OfferInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit) => {
    const { id: asked, version: _, supplierId, productId, sizeId, breaks, ...rest } = input
    const size = await tx.containerSize.findUnique({ where: { id: sizeId } })
    if (!size || size.productId !== productId || size.archivedAt !== null)
      refuse('missing', { sizeId }, say('Choose one of the product’s sizes; add it first where it lacks.'))
    const supplier = await tx.supplier.findUnique({ where: { id: supplierId } })
    if (!supplier || supplier.archivedAt !== null)
      refuse('missing', { supplierId }, say('This supplier is not in use; choose another.'))
    if (asked !== undefined && (await offerThere(tx, asked)).productId !== productId)
      refuse('missing', { id: asked }, say('This offer buys another product.'))
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
    const { id } = await saveRow(audit, keptOffers(tx, productId), input, {
      data: { ...data, supplierId, sizeId },
      added: { productId },
    })
    return { id }
  })
}

const keptOffers = (tx: Tx, productId: string) => ({
  table: tx.supplierOffer,
  entity: 'stock',
  noun: 'offer',
  partOf: productId,
})

function checkInput({ containersPerPack, shelfLifeDays }: OfferInput): void {
  if (!Number.isInteger(containersPerPack) || containersPerPack < 1 || containersPerPack > 1000)
    refuse(
      'count-bad',
      { containersPerPack },
      say('A pack of {containersPerPack} containers is none; give a whole number from 1.', {
        containersPerPack,
      }),
    )
  if (shelfLifeDays !== null && !(Number.isInteger(shelfLifeDays) && shelfLifeDays >= 1))
    refuse(
      'life-bad',
      { shelfLifeDays },
      say(
        '{shelfLifeDays} days from delivery to the printed date is none; give 1 or more, or leave it empty.',
        { shelfLifeDays },
      ),
    )
}

/**
 * Takes an offer out of use; asked about where its product is bought no other way, its orders are proposed from it, or
 * its supplier has an open order for that size.
 */
export function archiveOffer(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { id, productId, sizeId, supplierId } = await offerThere(tx, input.id)
    const uses = [
      ...(await offerLines(tx, { id }, { others: false })),
      ...(await openOrderLines(tx, { productId, sizeId }, supplierId)),
    ]
    askFirst('in-use', uses, { field: 'id', lead: say('It is still in use:'), accepted: input.accepted })
    await archiveRow(audit, keptOffers(tx, productId), input, { at })
  })
}

/**
 * Takes an offer back into use; orders are proposed from it only where its product has no other it is bought by.
 * Refused while its supplier or its size is put away.
 */
export function restoreOffer(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    const { id, productId, supplierId, sizeId } = await offerThere(tx, input.id)
    const supplier = await tx.supplier.findUniqueOrThrow({ where: { id: supplierId } })
    const size = await tx.containerSize.findUniqueOrThrow({ where: { id: sizeId } })
    const away = supplier.archivedAt !== null ? supplier.name : size.archivedAt !== null ? size.label : null
    if (away !== null)
      refuse('put-away', { id }, say('{away} is put away: take that back into use first.', { away }))
    const inUse = await tx.supplierOffer.count({ where: { productId, archivedAt: null } })
    await restoreRow(audit, keptOffers(tx, productId), input, { preferred: inUse === 0 })
  })
}

async function offerThere(tx: Tx, id: string) {
  return found(
    await tx.supplierOffer.findUnique({ where: { id } }),
    { id },
    say('This offer is not there any more.'),
  )
}
