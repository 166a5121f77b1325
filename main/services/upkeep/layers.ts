import type { Tx } from '../../store/store.ts'

export type LayerView = Awaited<ReturnType<typeof layersOf>>[number]

/** What lies on a car, newest first, with its age. */
export async function layersOf(tx: Tx, vehicleId: string, today: string) {
  const rows = await tx.layer.findMany({
    where: { vehicleId },
    include: { product: { select: { name: true } } },
    orderBy: [{ laidOn: 'desc' }, { id: 'desc' }],
  })
  return rows.map(({ id, stage, productId, laidOn, product }) => ({
    id,
    stage: stage as 'coat' | 'topper',
    productId,
    productName: product.name,
    laidOn,
    ageDays: daysFrom(laidOn, today),
  }))
}

/** Days from one day to another. */
export function daysFrom(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days
}
