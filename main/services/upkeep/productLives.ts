import { refuse } from '../../domain/refusal.ts'
import { checkPrior, type LifePrior } from '../../domain/upkeep/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import type { IntervalView } from './views.ts'

export interface ProductLifeView {
  productId: string
  productName: string
  /** Renewed after so many days at ordinary exposure, before anything is seen of it. */
  intervalDays: number
  mark: IntervalView['productMark']
  /** How it wears out: 1 at random, 2 to 4 by age. */
  shape: number
  /** How sure of both: 0.35 is right to within a factor of 1.4, two times of three. */
  ageSpread: number
  shapeSpread: number
  /** 0: what the program begins with. */
  version: number
}

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
export async function saveProductLife(
  desk: Desk,
  input: Omit<ProductLifeView, 'productName'>,
): Promise<ProductLifeView> {
  const { productId, version, ...data } = input
  if (!Number.isInteger(data.intervalDays) || data.intervalDays < 1 || data.intervalDays > 7_300)
    refuse(
      'interval-bad',
      { intervalDays: data.intervalDays },
      `${data.intervalDays} days is no interval; give whole days from 1 to 7,300.`,
    )
  checkPrior({ ...data, age: data.intervalDays, level: 0.9 }, 'life')
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const before = (await productLives(tx)).get(productId)
    if (!before) refuse('missing', { productId }, 'This is no coating or topper; choose another.')
    if (before.version === 0 && version === 0) await tx.productLife.create({ data: { ...data, productId } })
    else {
      const { count } = await tx.productLife.updateMany({
        where: { productId, version },
        data: { ...data, version: { increment: 1 } },
      })
      assertFresh(count, 'product life', productId)
    }
    audit({
      act: 'changed',
      entity: 'product life',
      entityId: productId,
      detail: changesBetween(before, data),
    })
    return (await productLives(tx)).get(productId)!
  })
}
