import { checkDate } from '../../domain/calendar/index.ts'
import { allocate, checkMinor } from '../../domain/money/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { amountWords } from '../../domain/shelf/index.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { AuditEntry, Tx } from '../../store/store.ts'
import type { Desk } from '../desk.ts'
import { appendMoves } from './append.ts'
import { countedProduct, shelfDay } from './shelfGround.ts'

export interface ReceivedLine {
  productId: string
  sizeId: string
  /** Bottles, cans, boxes: each becomes a lot of its own. */
  containers: number
  /** The last day of use by the label; null: none printed. */
  expiresOn: string | null
  batch: string | null
  /** What they cost together, without carriage; 0 for a sample. */
  costMinor: number
  orderLineId?: string | null | undefined
}

export interface ReceiveInput {
  lines: ReceivedLine[]
  supplierId?: string | null | undefined
  /** Shared among the lines by their value. */
  carriageMinor?: number | undefined
}

export interface ReceivedView {
  lots: { id: string; number: number; productId: string; sizeLabel: string }[]
  words: string[]
}

const mostContainers = 500

/** Goods come in without an order: bought over the counter, a sample, what stood there when counting began. */
export function receiveGoods(desk: Desk, input: ReceiveInput): Promise<ReceivedView> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, (tx, audit) =>
    receiveLines(tx, audit, desk, input),
  )
}

/**
 * Puts goods on the shelf inside a transaction: a lot and a receipt for each container, with its share of cost and
 * carriage, so that the receipts together cost what was paid to the minor unit.
 */
export async function receiveLines(
  tx: Tx,
  audit: (entry: AuditEntry) => void,
  desk: Desk,
  input: ReceiveInput,
): Promise<ReceivedView> {
  if (input.lines.length === 0)
    throw new Refusal('list-empty', 'lines', [], 'Nothing was received yet; enter at least one line.')
  const { date } = await shelfDay(tx, desk.now())
  const carriage = shares(checkCost(input.carriageMinor ?? 0, 'carriageMinor'), input.lines)
  let number = (await tx.lot.aggregate({ _max: { number: true } }))._max.number ?? 0
  const lots: ReceivedView['lots'] = []
  const words: string[] = []
  for (const [i, line] of input.lines.entries()) {
    const field = `lines.${i}`
    const product = await countedProduct(tx, line.productId)
    const size = await tx.containerSize.findUnique({ where: { id: line.sizeId } })
    if (!size || size.productId !== line.productId)
      throw new Refusal('missing', `${field}.sizeId`, line.sizeId, 'This size is not one of the product.')
    checkContainers(line.containers, `${field}.containers`)
    if (line.expiresOn !== null) checkDate(line.expiresOn, `${field}.expiresOn`)
    if (line.expiresOn !== null && line.expiresOn < date)
      throw new Refusal(
        'expired-already',
        `${field}.expiresOn`,
        line.expiresOn,
        `${product.name} with the date ${line.expiresOn} is past it already: send it back, or correct the date.`,
      )
    const cost = checkCost(line.costMinor, `${field}.costMinor`) + carriage[i]!
    const costs = allocate(cost, Array<number>(line.containers).fill(1))
    const centi = size.measuredCenti ?? size.labelCenti
    for (const costMinor of costs) {
      number += 1
      const lot = await tx.lot.create({
        data: {
          number,
          productId: line.productId,
          sizeId: size.id,
          batch: line.batch === null ? null : checkNote(line.batch, `${field}.batch`, 60) || null,
          receivedOn: date,
          expiresOn: line.expiresOn,
          supplierId: input.supplierId ?? null,
          orderLineId: line.orderLineId ?? null,
        },
      })
      await appendMoves(tx, [
        {
          lotId: lot.id,
          productId: line.productId,
          kind: 'receipt',
          centi,
          at: desk.now(),
          by: desk.who,
          why: null,
          jobId: null,
          costMinor,
        },
      ])
      lots.push({ id: lot.id, number, productId: line.productId, sizeLabel: size.label })
    }
    audit({
      act: 'received',
      entity: 'stock',
      entityId: line.productId,
      detail: { sizeId: size.id, containers: line.containers, costMinor: cost, expiresOn: line.expiresOn },
    })
    words.push(
      `${line.containers} × ${size.label} of ${product.name} received, ` +
        `${amountWords(centi * line.containers, product.unit)} in all`,
    )
  }
  return { lots, words }
}

/** Carriage by the lines' value; where nothing cost anything, by their containers. */
function shares(carriageMinor: number, lines: readonly ReceivedLine[]): number[] {
  const weights = lines.some(line => line.costMinor > 0)
    ? lines.map(line => Math.max(0, line.costMinor))
    : lines.map(line => Math.max(1, line.containers))
  return allocate(carriageMinor, weights)
}

function checkContainers(containers: number, field: string): void {
  if (!Number.isInteger(containers) || containers < 1 || containers > mostContainers)
    throw new Refusal(
      'count-bad',
      field,
      containers,
      `${containers} containers cannot be received; give a whole number from 1 to ${mostContainers}.`,
    )
}

function checkCost(costMinor: number, field: string): number {
  if (checkMinor(costMinor, field) < 0)
    throw new Refusal('cost-bad', field, costMinor, 'Goods cost 0 or more; give what was paid for the line.')
  return costMinor
}
