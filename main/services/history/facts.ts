/** What lines of the history are put into words with. */

import { datedWords } from '../../domain/calendar/index.ts'
import type { Say } from '../../domain/history/index.ts'
import { moneyWords } from '../../domain/money/index.ts'
import type { Unit } from '../../domain/shelf/index.ts'
import type { AuditLine } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { idsIn, namesIn } from './names.ts'

/** Times, money, amounts and names as the shop writes them, for these lines. */
export async function factsOf(tx: Tx, lines: readonly AuditLine[], nowAt: number): Promise<Say> {
  const { zone, currency } = await shopOf(tx)
  const ids = idsIn(lines)
  const [names, units] = [await namesIn(tx, ids), await unitsIn(tx, ids)]
  return {
    when: at => datedWords(at, zone, nowAt),
    money: minor => moneyWords(minor, currency),
    nameOf: id => names.get(id),
    unitOf: id => units.get(id),
  }
}

/** What the products and bottles among these are measured in. */
async function unitsIn(tx: Tx, ids: string[]): Promise<Map<string, Unit>> {
  const lots = await tx.lot.findMany({ where: { id: { in: ids } }, select: { id: true, productId: true } })
  const counted = await tx.shelfProduct.findMany({
    where: { productId: { in: [...ids, ...lots.map(({ productId }) => productId)] } },
    select: { productId: true, unit: true },
  })
  const units = new Map(counted.map(({ productId, unit }) => [productId, unit as Unit]))
  for (const { id, productId } of lots) {
    const unit = units.get(productId)
    if (unit !== undefined) units.set(id, unit)
  }
  return units
}
