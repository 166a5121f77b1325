import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { checkPrior, type LifePrior } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import type { ProductLifeInput } from './inputs.ts'

export type ProductLifeView = ProductLifeInput & { productName: string }

/** Where a data sheet is silent: half a year for a topper, a year for a coating. Common practice, no source. */
const usualDays = { topper: 182, coating: 365 } as const
const usualShape = { shape: 2.5, ageSpread: 0.35, shapeSpread: 0.4 } as const

/** How long the coatings and toppers are taken to last, archived ones too: what is on a car stays known. */
export async function productLives(tx: Tx): Promise<Map<string, ProductLifeView>> {
  const rows = await tx.product.findMany({
    where: { kind: { in: ['coating', 'topper'] } },
    include: { life: true },
    orderBy: [{ kind: 'desc' }, { name: 'asc' }],
  })
  return new Map(
    rows.map(({ id, name, kind, life }) => {
      const known = life
        ? { ...life, mark: life.mark as ProductLifeView['mark'] }
        : {
            intervalDays: usualDays[kind === 'topper' ? 'topper' : 'coating'],
            mark: 'common practice' as const,
            ...usualShape,
            version: 0,
          }
      return [id, { ...known, productId: id, productName: name }]
    }),
  )
}

/** The belief a fit starts from: what share still works at the product's interval is what the shop renews at. */
export function priorOf(life: ProductLifeView, level: number): LifePrior {
  const { intervalDays: age, shape, ageSpread, shapeSpread } = life
  return { age, level, shape, ageSpread, shapeSpread }
}

/** The lives as a list, toppers first. */
export async function listProductLives(desk: Desk): Promise<ProductLifeView[]> {
  return [...(await productLives(desk.store.read)).values()]
}

/** Says how long a product lasts; plans that stand are not moved by it. */
export async function saveProductLife(desk: Desk, input: ProductLifeInput): Promise<ProductLifeView> {
  const { productId, version, ...data } = input
  checkPrior({ ...data, age: data.intervalDays, level: 0.9 }, 'life')
  return act(desk, async (tx, audit) => {
    const { productName } = found(
      (await productLives(tx)).get(productId),
      { productId },
      say('This is no coating or topper; choose another.'),
    )
    const kept = { table: tx.productLife, entity: 'product life' }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, data)
    return { ...data, productId, productName, version: saved.version }
  })
}
