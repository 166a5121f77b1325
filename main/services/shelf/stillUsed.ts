/** What still rests on a product, a size or a way to buy, a line each: it is asked about before one is put away. */
import { say } from '../../domain/language/index.ts'
import { lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'

/** The open orders with a line of this product or size, of one supplier where that is named. */
export async function openOrderLines(
  tx: Tx,
  line: { productId?: string; sizeId?: string },
  supplierId?: string,
): Promise<string[]> {
  const orders = await tx.purchaseOrder.findMany({
    where: {
      status: { in: ['draft', 'sent', 'partly'] },
      lines: { some: line },
      ...(supplierId !== undefined && { supplierId }),
    },
    select: { number: true },
    orderBy: { number: 'asc' },
  })
  return orders.map(({ number }) => say('Order {number} has it on its list', { number }))
}

/** How many containers of a product, or of one size of it, have something in them. */
export async function containerLines(tx: Tx, productId: string, sizeId?: string): Promise<string[]> {
  const lots = await lotRows(tx, [productId])
  const count = lots.filter(lot => sizeId === undefined || lot.sizeId === sizeId).length
  if (count === 0) return []
  return [
    say('{count, plural, one {1 container on the shelf} other {{count} containers on the shelf}}', { count }),
  ]
}

/**
 * The ways to buy that would go, each with what goes with it: the only way to buy a product, or the one its orders are
 * proposed from. `others` names the rest too.
 */
export async function offerLines(
  tx: Tx,
  going: { id: string } | { supplierId: string },
  { others }: { others: boolean },
): Promise<string[]> {
  const leaving = await tx.supplierOffer.findMany({
    where: { ...going, archivedAt: null },
    include: { size: true, product: true },
    orderBy: [{ product: { name: 'asc' } }, { id: 'asc' }],
  })
  const staying = await tx.supplierOffer.findMany({
    where: { archivedAt: null, NOT: going, productId: { in: leaving.map(each => each.productId) } },
    select: { productId: true },
  })
  const stillBought = new Set(staying.map(each => each.productId))
  return leaving.flatMap(({ productId, product, size, preferred }) => {
    const what = `${product.name}, ${size.label}`
    if (!stillBought.has(productId)) return [say('{what}: there is no other way to buy it', { what })]
    if (preferred) return [say('{what}: orders are proposed from it', { what })]
    return others ? [what] : []
  })
}
