/** What every use case of the shelf begins with: the shop's day, the products counted, their bottles. */

import { dateOf, dayNumber } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { type Holding, holdingOf, type Unit } from '../../domain/shelf/index.ts'
import { emptiedLotRows, type LotRow, lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ServiceClass } from './inputs.ts'

export interface ShelfDay {
  readonly nowAt: number
  readonly zone: string
  readonly currency: string
  /** Today in the shop, as a date and as a day number. */
  readonly date: string
  readonly day: number
}

export async function shelfDay(tx: Tx, nowAt: number): Promise<ShelfDay> {
  const { zone, currency } = await shopOf(tx)
  const date = dateOf(nowAt, zone)
  return { nowAt, zone, currency, date, day: dayNumber(date) }
}

/** A product that is counted, as the shelf reads it. */
export interface Counted {
  readonly id: string
  readonly name: string
  readonly kind: string
  readonly unit: Unit
  readonly densityGPerMl: number | null
  readonly lifeAfterOpeningDays: number | null
  readonly place: string
  readonly serviceClass: ServiceClass
  readonly holdsUpBookings: boolean
}

/** The products counted, by id: those asked for, or all in use. */
export async function countedProducts(tx: Tx, ids?: readonly string[]): Promise<Map<string, Counted>> {
  const rows = await tx.shelfProduct.findMany({
    where: ids ? { productId: { in: [...ids] } } : { product: { archivedAt: null } },
    include: { product: { select: { name: true, kind: true } } },
    orderBy: { product: { name: 'asc' } },
  })
  return new Map(
    rows.map(({ productId, product, unit, serviceClass, ...kept }) => [
      productId,
      {
        ...kept,
        ...product,
        id: productId,
        unit: unit as Unit,
        serviceClass: serviceClass as ServiceClass,
      },
    ]),
  )
}

/** One product that is counted. */
export async function countedProduct(tx: Tx, productId: string): Promise<Counted> {
  const product = (await countedProducts(tx, [productId])).get(productId)
  if (product) return product
  const row = await tx.product.findUnique({ where: { id: productId }, select: { name: true } })
  refuse(
    row ? 'not-counted' : 'missing',
    { productId },
    row
      ? say('{name} is not counted yet: say on its page how it is counted first.', { name: row.name })
      : say('This product is not there; look at the shelf again.'),
  )
}

/** The bottles of one product with something in them, and those emptied last, which may hold more than was counted. */
export async function bottlesOf(tx: Tx, productId: string): Promise<LotRow[]> {
  return [...(await lotRows(tx, [productId])), ...(await emptiedLotRows(tx, productId))]
}

/** A bottle as the rules of use read it. */
export function holdingOfRow(row: LotRow): Holding {
  return holdingOf(row, row.centi)
}
