/** How a product is counted and in which sizes it comes. */
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { centiOf, checkProduct, weightWords } from '../../domain/shelf/index.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowAccepted } from '../desk/inputs.ts'
import { archiveRow, type RowSeen, restoreRow, saveRow, saveSingle } from '../desk/keep.ts'
import type { ShelfFields, ShelfProductInput, SizeInput } from './inputs.ts'
import { containerLines, openOrderLines } from './stillUsed.ts'

/**
 * Begins to count a product, or changes how. The unit stays once there are moves: what was counted in pieces has no
 * millilitres.
 */
export function saveShelfProduct(desk: Desk, input: ShelfProductInput): Promise<{ version: number }> {
  const { productId, version, ...fields } = input
  return act(desk, async (tx, audit) => {
    const product = await tx.product.findUnique({ where: { id: productId } })
    if (!product) refuse('missing', { productId }, say('This product is not there.'))
    const data = { ...fields, place: checkNote(fields.place, 'place', 60) }
    checkFields(product.name, data)
    const kept = { table: tx.shelfProduct, entity: 'stock' }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, data)
    const unit = saved.before?.unit ?? data.unit
    if (unit !== data.unit && (await tx.stockMove.count({ where: { productId } })) > 0)
      refuse(
        'unit-fixed',
        { unit: data.unit },
        say(
          '{name} has been counted {unit, select, ml {by volume} g {by weight} other {in pieces}}, so that stays; add another product for the other way.',
          { name: product.name, unit },
        ),
      )
    return { version: saved.version }
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
      say('An opened container keeps without limit or so many days, not both; leave one out.'),
    )
}

/** Adds a container size, or changes one. Bottles received before keep what they were counted with. */
export async function saveSize(desk: Desk, input: SizeInput): Promise<{ id: string }> {
  const labelCenti = positive(input.labelAmount, 'labelAmount')
  const data = {
    label: checkText(input.label, 'label', say('What the label says'), 40),
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
      say('{measuredAmount} is far from the {labelAmount} on the label; measure again.', {
        measuredAmount: input.measuredAmount,
        labelAmount: input.labelAmount,
      }),
    )
  if (input.tareG !== null && !(input.tareG > 0 && input.tareG < 100_000))
    refuse(
      'tare-bad',
      { tareG: input.tareG },
      say('An empty container does not weigh {tare}.', { tare: weightWords(input.tareG) }),
    )
  return act(desk, async (tx, audit) => {
    const { productId } = input
    if (input.id === undefined) await assertProduct(tx, productId)
    else if ((await tx.containerSize.findUnique({ where: { id: input.id } }))?.productId !== productId)
      refuse('missing', { id: input.id }, say('This size is not one of the product.'))
    const { id } = await saveRow(audit, keptSizes(tx, productId), input, { data, added: { productId } })
    return { id }
  })
}

const keptSizes = (tx: Tx, productId: string) => ({
  table: tx.containerSize,
  entity: 'stock',
  noun: 'size',
  partOf: productId,
})

/**
 * Puts a size away: it is bought no more; its bottles stay. Refused while an offer buys it; asked about while bottles of
 * it stand on the shelf or an open order has it.
 */
export function archiveSize(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const offers = await tx.supplierOffer.findMany({
      where: { sizeId: input.id, archivedAt: null },
      select: { supplier: { select: { name: true } } },
    })
    if (offers.length > 0)
      refuse(
        'size-bought',
        { id: input.id },
        say('{offers} still sells it to you; take that offer out first.', {
          offers: offers.map(offer => offer.supplier.name).join(', '),
        }),
      )
    const { productId } = await sizeThere(tx, input.id)
    const uses = [
      ...(await containerLines(tx, productId, input.id)),
      ...(await openOrderLines(tx, { sizeId: input.id })),
    ]
    askFirst('in-use', uses, { field: 'id', lead: say('It is still in use:'), accepted: input.accepted })
    await archiveRow(audit, keptSizes(tx, productId), input, { at })
  })
}

/** Takes a size back into use: it can be bought again. */
export function restoreSize(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    const { productId } = await sizeThere(tx, input.id)
    await restoreRow(audit, keptSizes(tx, productId), input)
  })
}

async function sizeThere(tx: Tx, id: string) {
  return found(
    await tx.containerSize.findUnique({ where: { id } }),
    { id },
    say('This size is not there any more.'),
  )
}

async function assertProduct(tx: Tx, id: string): Promise<void> {
  if ((await tx.shelfProduct.count({ where: { productId: id } })) === 0)
    refuse('not-counted', { productId: id }, say('Say first how this product is counted.'))
}

function positive(amount: number, field: string): number {
  const centi = centiOf(amount, field)
  if (centi <= 0)
    refuse(
      'amount-not-positive',
      { [field]: amount },
      say('{amount} is no content; give more than nothing.', { amount }),
    )
  return centi
}
