/** What people call the rows that lines speak of. */
import { say } from '../../domain/language/index.ts'
import type { AuditLine } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'

/** Ids as the database makes them; what else stands in a line is no row's. */
const idForm = /"([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})"/g

/** The ids of what these lines are about or point to. */
export function idsIn(lines: readonly AuditLine[]): string[] {
  const ids = new Set(lines.map(line => line.entityId))
  for (const { detail } of lines)
    for (const [, id = ''] of JSON.stringify(detail).matchAll(idForm)) ids.add(id)
  return [...ids]
}

/** What people call the rows of these ids, as far as they have a name. */
export async function namesIn(tx: Tx, ids: string[]): Promise<Map<string, string>> {
  const where = { id: { in: ids } }
  const select = { id: true, name: true } as const
  const [named, vehicles, jobs, orders, lots] = await Promise.all([
    Promise.all([
      tx.customer.findMany({ where, select }),
      tx.product.findMany({ where, select }),
      tx.treatment.findMany({ where, select }),
      tx.bay.findMany({ where, select }),
      tx.crewMember.findMany({ where, select }),
      tx.lendable.findMany({ where, select }),
      tx.supplier.findMany({ where, select }),
      tx.template.findMany({ where, select }),
    ]),
    tx.vehicle.findMany({ where, select: { id: true, plate: true, make: true, model: true } }),
    tx.job.findMany({ where, select: { id: true, number: true } }),
    tx.purchaseOrder.findMany({ where, select: { id: true, number: true } }),
    tx.lot.findMany({ where, select: { id: true, number: true } }),
  ])
  return new Map([
    ...named.flat().map(({ id, name }) => [id, name] as const),
    ...vehicles.map(
      ({ id, plate, make, model }) => [id, plate || [make, model].filter(Boolean).join(' ')] as const,
    ),
    ...jobs.map(({ id, number }) => [id, say('job {number}', { number })] as const),
    ...orders.map(({ id, number }) => [id, say('order {number}', { number })] as const),
    ...lots.map(({ id, number }) => [id, say('bottle {number}', { number })] as const),
  ])
}
