import { say } from '../../domain/language/index.ts'
import { checkMinor } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { amountWords, receiveGoods as planReceipt, type ReceiptPlan } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { appendMoves, entryOf } from './append.ts'
import { countedProduct, shelfDay } from './countedProducts.ts'
import type { ReceiveInput } from './inputs.ts'

/** Goods that come in, by an order or without one. */
interface Arriving extends Omit<ReceiveInput, 'lines'> {
  lines: (ReceiveInput['lines'][number] & { orderLineId?: string })[]
}

export interface ReceivedView {
  lots: { id: string; number: number; productId: string; sizeLabel: string }[]
  words: string[]
}

/** Goods come in without an order: bought over the counter, a sample, what stood there when counting began. */
export function receiveGoods(desk: Desk, input: ReceiveInput): Promise<ReceivedView> {
  return act(desk, (tx, audit) => receiveLines(tx, audit, desk, input))
}

/**
 * Puts goods on the shelf inside a transaction: a lot and a receipt for each container, with its share of cost and
 * carriage, so that the receipts together cost what was paid to the minor unit.
 */
export async function receiveLines(tx: Tx, audit: Audit, desk: Desk, input: Arriving): Promise<ReceivedView> {
  const { date } = await shelfDay(tx, desk.now())
  const supplierId = input.supplierId ?? null
  if (supplierId !== null && (await tx.supplier.count({ where: { id: supplierId } })) === 0)
    refuse('missing', { supplierId }, say('This supplier is not there; choose another.'))
  const found = []
  for (const [i, line] of input.lines.entries()) {
    const product = await countedProduct(tx, line.productId)
    const size = await tx.containerSize.findUnique({ where: { id: line.sizeId } })
    if (!size || size.productId !== line.productId)
      refuse('missing', { [`lines.${i}.sizeId`]: line.sizeId }, say('This size is not one of the product.'))
    checkCost(line.costMinor, `lines.${i}.costMinor`)
    found.push({ line, product, size, contentCenti: size.measuredCenti ?? size.labelCenti })
  }
  const plan = planReceipt(
    found.map(({ line, contentCenti }, i) => ({
      ...line,
      contentCenti,
      goodsMinor: line.costMinor,
      batch: line.batch === null ? null : checkNote(line.batch, `lines.${i}.batch`, 60) || null,
    })),
    checkCost(input.carriageMinor ?? 0, 'carriageMinor'),
    { date, at: desk.now(), by: desk.who },
  )
  const lots = await writeLots(tx, plan, input)
  for (const { line } of found)
    audit({
      act: 'received',
      entity: 'stock',
      entityId: line.productId,
      detail: { sizeId: line.sizeId, containers: line.containers, expiresOn: line.expiresOn },
    })
  return {
    lots,
    words: found.map(({ line, product, size, contentCenti }) =>
      say('{containers} × {label} of {name} received, {contentCenti} in all', {
        containers: line.containers,
        label: size.label,
        name: product.name,
        contentCenti: amountWords(contentCenti * line.containers, product.unit),
      }),
    ),
  }
}

/** Numbers the lots and writes them with their receipts; the plan holds them in the order of the lines. */
async function writeLots(
  tx: Tx,
  plan: ReceiptPlan,
  { lines, supplierId = null }: Arriving,
): Promise<ReceivedView['lots']> {
  const orderLineIds = lines.flatMap(line =>
    new Array<string | null>(line.containers).fill(line.orderLineId ?? null),
  )
  let number = await nextLotNumber(tx)
  const lots: ReceivedView['lots'] = []
  for (const [i, lot] of plan.lots.entries()) {
    const row = await tx.lot.create({
      data: {
        ...lot,
        number,
        supplierId,
        orderLineId: orderLineIds[i] ?? null,
      },
      include: { size: { select: { label: true } } },
    })
    lots.push({ id: row.id, number, productId: lot.productId, sizeLabel: row.size?.label ?? '' })
    number += 1
  }
  await appendMoves(
    tx,
    lots.flatMap(({ id: lotId }, i) => plan.moves.slice(i, i + 1).map(move => entryOf({ ...move, lotId }))),
  )
  return lots
}

/** What the next bottle is called by. */
export async function nextLotNumber(tx: Tx): Promise<number> {
  return ((await tx.lot.aggregate({ _max: { number: true } }))._max.number ?? 0) + 1
}

function checkCost(costMinor: number, field: string): number {
  if (checkMinor(costMinor, field) < 0)
    refuse('cost-bad', { [field]: costMinor }, say('Goods cost 0 or more; give what was paid for the line.'))
  return costMinor
}
