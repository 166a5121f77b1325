import { checkDate } from '../../../domain/calendar/index.ts'
import { say } from '../../../domain/language/index.ts'
import { timesMinor } from '../../../domain/money/index.ts'
import { refuse } from '../../../domain/refusal.ts'
import { assertFresh } from '../../../store/store.ts'
import { act, type Desk } from '../../desk/desk.ts'
import { type ReceivedView, receiveLines } from '../receive.ts'
import type { PromiseInput, ReceiveOrderInput } from './inputs.ts'
import { goodsOf, type OrderRow, type OrderView, orderNow, orderRow } from './orderViews.ts'

/**
 * Takes in what came of an order, the whole or a part. Each delivery costs its part of the line and of the carriage,
 * reckoned from what has come in all, so that the parts of a line add up to it to the minor unit.
 */
export function receiveOrder(
  desk: Desk,
  input: ReceiveOrderInput,
): Promise<{ order: OrderView; received: ReceivedView }> {
  return act(desk, async (tx, audit) => {
    const row = await orderRow(tx, input.id)
    if (row.status !== 'sent' && row.status !== 'partly')
      refuse(
        'not-under-way',
        { id: input.id },
        row.status === 'draft'
          ? say('Order {number} has not been sent yet: send it, or mark it as sent.', { number: row.number })
          : say('Order {number} is closed; take in what came without an order.', { number: row.number }),
      )
    const { count } = await tx.purchaseOrder.updateMany({
      where: { id: row.id, version: input.version },
      data: { version: { increment: 1 } },
    })
    assertFresh(count, 'order', row.id)
    input.lines.forEach(({ lineId }, i) => {
      if (input.lines.findIndex(each => each.lineId === lineId) < i)
        refuse(
          'line-twice',
          { [`lines.${i}.lineId`]: lineId },
          say('This line stands here twice; say once how many came.'),
        )
    })
    const lines = input.lines.map((line, i) => receivedLine(row, line, `lines.${i}`))
    // With nothing more to come it may also just be closed.
    const received =
      lines.length === 0 && input.complete
        ? { lots: [], words: [] }
        : await receiveLines(tx, audit, desk, {
            lines,
            supplierId: row.supplierId,
            carriageMinor: carriageOf(row, input),
          })
    for (const line of input.lines)
      await tx.purchaseOrderLine.update({
        where: { id: line.lineId },
        data: { receivedContainers: { increment: line.containers } },
      })
    const now = await orderRow(tx, row.id)
    const done = input.complete === true || now.lines.every(line => openOf(line) <= 0)
    await tx.purchaseOrder.update({
      where: { id: row.id },
      data: {
        status: done ? 'received' : 'partly',
        firstReceivedAt: row.firstReceivedAt ?? desk.now(),
        closedAt: done ? desk.now() : null,
      },
    })
    audit({
      act: done ? 'order received' : 'order received in part',
      entity: 'order',
      entityId: row.id,
      detail: {
        lines: input.lines.map(({ lineId, containers }) => ({ lineId, containers })),
        complete: done,
      },
    })
    return { order: await orderNow(tx, row.id, desk.now()), received }
  })
}

type Line = OrderRow['lines'][number]

function openOf(line: Line): number {
  return line.packs * line.containersPerPack - line.receivedContainers
}

function receivedLine(row: OrderRow, input: ReceiveOrderInput['lines'][number], field: string) {
  const line = row.lines.find(each => each.id === input.lineId)
  if (!line) refuse('missing', { [`${field}.lineId`]: input.lineId }, say('This line is not on the order.'))
  const open = openOf(line)
  if (!Number.isInteger(input.containers) || input.containers < 1 || input.containers > open)
    refuse(
      'count-bad',
      { [`${field}.containers`]: input.containers },
      say(
        '{containers} of {name} cannot be received: {open} are open. Take in what was not ordered without an order.',
        { containers: input.containers, name: line.product.name, open },
      ),
    )
  return {
    productId: line.productId,
    sizeId: line.sizeId,
    containers: input.containers,
    expiresOn: input.expiresOn,
    batch: input.batch,
    costMinor:
      partOf(line, line.receivedContainers + input.containers) - partOf(line, line.receivedContainers),
    orderLineId: line.id,
  }
}

/** What so many of a line's containers cost. */
function partOf(line: Line, containers: number): number {
  const whole = timesMinor(line.packPriceMinor, line.packs)
  return Math.round((whole * containers) / (line.packs * line.containersPerPack))
}

/** The part of the carriage that falls to this delivery: in all, as much of it as of the goods; at the end all of it. */
function carriageOf(row: OrderRow, { lines, complete }: ReceiveOrderInput): number {
  const goods = goodsOf(row)
  const share = (value: number) => (goods === 0 ? 0 : Math.round((row.carriageMinor * value) / goods))
  const before = row.lines.reduce((sum, line) => sum + partOf(line, line.receivedContainers), 0)
  const now = row.lines.reduce((sum, line) => {
    const came = lines.filter(each => each.lineId === line.id).reduce((all, each) => all + each.containers, 0)
    return sum + partOf(line, line.receivedContainers + came)
  }, 0)
  return (complete ? row.carriageMinor : share(now)) - share(before)
}

/** The supplier has named a day: the projection counts on it, and the order is late only after it. */
export function promiseOrder(desk: Desk, { id, version, promisedOn }: PromiseInput): Promise<OrderView> {
  return act(desk, async (tx, audit) => {
    checkDate(promisedOn, 'promisedOn')
    const row = await orderRow(tx, id)
    if (row.status !== 'sent' && row.status !== 'partly')
      refuse('not-under-way', { id }, say('Order {number} is not under way.', { number: row.number }))
    const { count } = await tx.purchaseOrder.updateMany({
      where: { id, version },
      data: { promisedOn, expectedOn: promisedOn, lateFromOn: promisedOn, version: { increment: 1 } },
    })
    assertFresh(count, 'order', id)
    audit({ act: 'delivery promised', entity: 'order', entityId: id, detail: { promisedOn } })
    return orderNow(tx, id, desk.now())
  })
}
