/** How a product is counted and in which sizes it comes. */
import { refuse } from '../../domain/refusal.ts'
import { centiOf, checkProduct } from '../../domain/shelf/index.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import type { ShelfFields } from './views/product.ts'

export interface ShelfProductInput extends ShelfFields {
  productId: string
  /** Of the shelf's record; left out where counting begins. */
  version?: number | undefined
}

/**
 * Begins to count a product, or changes how. The unit stays once there are moves: what was counted in pieces has no
 * millilitres.
 */
export function saveShelfProduct(desk: Desk, input: ShelfProductInput): Promise<{ version: number }> {
  const { productId, version, ...fields } = input
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const product = await tx.product.findUnique({ where: { id: productId } })
    if (!product) refuse('missing', { productId }, 'This product is not there.')
    const data = { ...fields, place: checkNote(fields.place, 'place', 60) }
    checkFields(product.name, data)
    const before = await tx.shelfProduct.findUnique({ where: { productId } })
    if (!before) {
      await tx.shelfProduct.create({ data: { productId, ...data } })
      audit({ act: 'counted from now on', entity: 'stock', entityId: productId, detail: data })
      return { version: 1 }
    }
    if (before.unit !== data.unit && (await tx.stockMove.count({ where: { productId } })) > 0)
      refuse(
        'unit-fixed',
        { unit: data.unit },
        `${product.name} has been counted in ${before.unit === 'piece' ? 'pieces' : before.unit}, so its unit ` +
          'stays; add a product for the other unit.',
      )
    const { count } = await tx.shelfProduct.updateMany({
      where: { productId, version: version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'stock', productId)
    audit({ act: 'changed', entity: 'stock', entityId: productId, detail: changesBetween(before, data) })
    return { version: before.version + 1 }
  })
}

function checkFields(name: string, fields: ShelfFields): void {
  const { storageLeastC, storageMostC, unit } = fields
  checkProduct({
    id: '',
    name,
    kind: 'consumable',
    unit,
    densityGPerMl: fields.densityGPerMl,
    lifeAfterOpeningDays: fields.lifeAfterOpeningDays,
    storage:
      storageLeastC === null || storageMostC === null ? null : { leastC: storageLeastC, mostC: storageMostC },
  })
  if (fields.lifeUnlimited && fields.lifeAfterOpeningDays !== null)
    refuse(
      'life-twice',
      { lifeUnlimited: fields.lifeAfterOpeningDays },
      'An opened container keeps without limit or so many days, not both; leave one out.',
    )
}

export interface SizeInput {
  id?: string | undefined
  version?: number | undefined
  productId: string
  label: string
  labelAmount: number
  measuredAmount: number | null
  tareG: number | null
}

/** Adds a container size, or changes one. Bottles received before keep what they were counted with. */
export async function saveSize(desk: Desk, input: SizeInput): Promise<{ id: string }> {
  const labelCenti = positive(input.labelAmount, 'labelAmount')
  const data = {
    label: checkText(input.label, 'label', 'What the label says', 40),
    labelCenti,
    measuredCenti: input.measuredAmount === null ? null : positive(input.measuredAmount, 'measuredAmount'),
    tareG: input.tareG,
  }
  // A bottle measured at a third or three times its label is a slip of the pen (common practice, no source).
  if (
    data.measuredCenti !== null &&
    (data.measuredCenti > 3 * labelCenti || data.measuredCenti * 3 < labelCenti)
  )
    refuse(
      'measured-bad',
      { measuredAmount: input.measuredAmount },
      `${input.measuredAmount} is far from the ${input.labelAmount} on the label; measure again.`,
    )
  if (input.tareG !== null && !(input.tareG > 0 && input.tareG < 100_000))
    refuse('tare-bad', { tareG: input.tareG }, `An empty container does not weigh ${input.tareG} g.`)
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { productId } = input
    if (input.id === undefined) {
      await assertProduct(tx, productId)
      const { id } = await tx.containerSize.create({ data: { ...data, productId } })
      audit({ act: 'size added', entity: 'stock', entityId: productId, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.containerSize.findUnique({ where: { id } })
    const { count } = await tx.containerSize.updateMany({
      where: { id, productId, version: input.version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'size', id)
    audit({
      act: 'size changed',
      entity: 'stock',
      entityId: productId,
      detail: changesBetween(before!, data),
    })
    return { id }
  })
}

/** Puts a size away: it is bought no more; its bottles stay. Refused while an offer buys it. */
export function archiveSize(desk: Desk, input: { id: string; version: number }): Promise<void> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const offers = await tx.supplierOffer.findMany({
      where: { sizeId: input.id, archivedAt: null },
      select: { supplier: { select: { name: true } } },
    })
    if (offers.length > 0)
      refuse(
        'size-bought',
        { id: input.id },
        `${offers.map(offer => offer.supplier.name).join(', ')} still sells it to you; take that offer out first.`,
      )
    const { count } = await tx.containerSize.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'size', input.id)
    audit({ act: 'size archived', entity: 'stock', entityId: input.id })
  })
}

async function assertProduct(tx: Tx, id: string): Promise<void> {
  if ((await tx.shelfProduct.count({ where: { productId: id } })) === 0)
    refuse('not-counted', { productId: id }, 'Say first how this product is counted.')
}

function positive(amount: number, field: string): number {
  const centi = centiOf(amount, field)
  if (centi <= 0)
    refuse('amount-not-positive', { [field]: amount }, `${amount} is no content; give more than nothing.`)
  return centi
}
