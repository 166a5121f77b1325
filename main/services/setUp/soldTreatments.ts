import type { Leaving } from '../../domain/cure/index.ts'
import { type CuringProduct, leavingOf, type ProductsById } from '../../domain/floor/index.ts'
import { sumMinor } from '../../domain/money/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import {
  type CarCheck,
  type CoatingFamily,
  type Condition,
  carChecksOf,
  checkText,
  type Finish,
  type ProductKind,
  type SizeClass,
} from '../../domain/shop/index.ts'
import { assertOneCoating, type Laid, layOut } from '../../domain/treatment/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { cautionFrom } from '../shelf/safetyView.ts'
import { rulesOf } from '../shelf/shelfRules.ts'
import { treatmentOf, withSteps } from './treatmentCheck.ts'

export interface Wish {
  treatmentIds: readonly string[]
  sizeClass: SizeClass
  finish: Finish
  condition: Condition
  /** Who has confirmed covered transport and storage; empty or left out: the car stays until it may get wet. */
  coveredBy?: string | undefined
}

export interface Sold extends Laid {
  /** In the shop's order, whatever order they were picked in. */
  readonly treatments: { id: string; name: string; priceMinor: number }[]
  readonly priceMinor: number
  /** What is ticked off around the work. */
  readonly checks: CarCheck[]
  readonly products: ProductsById
  readonly coveredBy: string | null
  readonly leaving: Leaving
}

/** The name that stands for the cover; null: nobody has confirmed any. */
function coverOf({ coveredBy }: Pick<Wish, 'coveredBy'>): string | null {
  return coveredBy?.trim() ? checkText(coveredBy, 'coveredBy', 'The name of who confirmed it', 80) : null
}

/**
 * What is wished for, laid out for this vehicle and priced for its size.
 * @throws Refusal with the field `treatmentIds` where it cannot be: not sold any more, two that coat the same thing,
 * never done on this finish, waits that cannot be kept.
 */
export async function sell(tx: Tx, wish: Wish): Promise<Sold> {
  const shop = await shopOf(tx)
  const coveredBy = coverOf(wish)
  const leaving = leavingOf({ coveredBy })
  const ids = [...new Set(wish.treatmentIds)]
  const rows = await tx.treatment.findMany({
    where: { id: { in: ids } },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: withSteps,
  })
  const gone = ids.find(id => rows.find(row => row.id === id)?.archivedAt !== null)
  if (gone !== undefined) {
    const name = rows.find(row => row.id === gone)?.name ?? 'One of the treatments'
    throw new Refusal('treatment-gone', 'treatmentIds', gone, `${name} is not sold any more; choose another.`)
  }
  const productIds = rows.flatMap(row => row.steps.flatMap(step => step.productId ?? []))
  const products = await productsById(tx, productIds)
  const treatments = rows.map(({ id, name, prices }) => ({
    id,
    name,
    priceMinor: (prices as Record<SizeClass, number>)[wish.sizeClass],
  }))
  try {
    const templates = rows.map(treatmentOf)
    assertOneCoating(templates, products)
    const laid = layOut({
      ...wish,
      treatments: templates,
      products,
      conditionFactors: shop.conditionFactors,
      gridMin: shop.gridMin,
      handoverRule: shop.handoverRule,
      leaving,
    })
    const priceMinor = sumMinor(treatments.map(each => each.priceMinor))
    return { ...laid, treatments, priceMinor, checks: carChecksOf(templates), products, coveredBy, leaving }
  } catch (error) {
    // The desk chose treatments, not steps: that is where the words belong.
    if (error instanceof Refusal) throw new Refusal(error.code, 'treatmentIds', error.value, error.message)
    throw error
  }
}

/** A product of what is sold: how it cures, and what it is for. */
interface SoldProduct extends CuringProduct {
  readonly family: CoatingFamily
}

/** Products by id, archived ones too: what a booked job uses stays known. */
export async function productsById(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, SoldProduct>> {
  const rows = await tx.product.findMany({
    where: { id: { in: [...new Set(ids)] } },
    include: { safety: true },
  })
  const regime = rows.some(row => row.safety) ? (await rulesOf(tx)).regimeUsed : 'un-ghs'
  return new Map(
    rows.map(({ id, name, kind, family, cureProfile, safety }) => [
      id,
      {
        id,
        name,
        kind: kind as ProductKind,
        family: family as CoatingFamily,
        cureProfile: fromJson<CuringProduct['cureProfile']>(cureProfile),
        caution: safety ? cautionFrom(name, safety, regime) : null,
      },
    ]),
  )
}
