/** What goes with the cars that are laid anew: what the shop lends them, and the cars themselves. */
import type { Going } from '../../domain/relay/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { borrower, stayOf, stillLent } from '../floor/lent.ts'

/**
 * The things of these jobs, and when some of them go with others. A car counts as a thing of its own visits; from its
 * next one on, which stays as it is, it is not to be had.
 */
export async function goingWith(tx: Tx, floor: Floor, laid: readonly JobRow[]): Promise<Going> {
  const things = new Map(
    laid.map(row => [row.id, [row.vehicleId, ...row.loans.map(loan => loan.lendableId)]] as const),
  )
  const asked = new Set([...things.values()].flat())
  const others = await tx.job.findMany({
    where: {
      id: { notIn: laid.map(row => row.id) },
      AND: [
        stillLent(floor.nowAt),
        {
          OR: [
            { vehicleId: { in: laid.map(row => row.vehicleId) } },
            { loans: { some: { lendableId: { in: [...asked] } } } },
          ],
        },
      ],
    },
    select: { ...borrower, vehicleId: true, loans: { select: { lendableId: true } } },
  })
  const nextOf = new Map(laid.map(row => [row.vehicleId, row.dropOffAt]))
  const lent = others.flatMap(job => {
    const { from, to } = stayOf(floor, job)
    const here = nextOf.get(job.vehicleId)
    const isNext = here !== undefined && here < from
    return [
      { thing: job.vehicleId, from, to: isNext ? Math.max(to, floor.toAt) : to },
      ...job.loans.map(loan => ({ thing: loan.lendableId, from, to })),
    ].filter(({ thing }) => asked.has(thing))
  })
  return { things, lent }
}
