import { minuteWords } from '../../domain/calendar/index.ts'
import type { Named } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'

/** Another job of the same vehicle: it is here for that from its drop-off to its handover. */
export interface OtherVisit {
  readonly number: number
  readonly plate: string
  readonly dropOffAt: number
  readonly handoverAt: number
}

/** What else a vehicle is or will be here for, in order. */
export async function otherVisits(
  tx: Tx,
  nowAt: number,
  { id, vehicleId }: { id: string; vehicleId: string },
): Promise<OtherVisit[]> {
  const jobs = await tx.job.findMany({
    where: {
      vehicleId,
      id: { not: id },
      OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: nowAt } }],
    },
    select: { number: true, dropOffAt: true, handoverAt: true, vehicle: { select: { plate: true } } },
    orderBy: { dropOffAt: 'asc' },
  })
  return jobs.map(({ vehicle, ...visit }) => ({ ...visit, plate: vehicle.plate }))
}

/** Why a vehicle cannot be here then, in words: it is here for another job already. Null: it can. */
export function visitInTheWay(
  shop: Named,
  visits: readonly OtherVisit[],
  { dropOffAt, handoverAt }: { dropOffAt: number; handoverAt: number },
): string | null {
  const other = visits.find(visit => visit.dropOffAt < handoverAt && visit.handoverAt > dropOffAt)
  if (!other) return null
  const when = (at: number) => minuteWords(at, shop.zone, shop.nowAt)
  const car = other.plate || 'this vehicle'
  return `${car} is here for job ${other.number} already, ${when(other.dropOffAt)} to ${when(other.handoverAt)}`
}
