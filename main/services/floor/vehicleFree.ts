import { minuteWords } from '../../domain/calendar/index.ts'
import type { Booked, Named } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import { otherLoans } from './lent.ts'

/**
 * Another job of the same vehicle, which is here for that from its drop-off to its handover; or one with which a thing
 * is lent meanwhile that this job borrows too.
 */
export interface OtherVisit {
  /** The thing; left out: it is the vehicle itself. */
  readonly lent?: string
  readonly jobId: string
  readonly number: number
  readonly plate: string
  readonly dropOffAt: number
  readonly handoverAt: number
}

/** What else a vehicle is or will be here for, and what borrows the job's things, in order. */
export async function otherVisits(
  tx: Tx,
  floor: Booked,
  { id, vehicleId }: { id: string; vehicleId: string },
): Promise<OtherVisit[]> {
  const jobs = await tx.job.findMany({
    where: {
      vehicleId,
      id: { not: id },
      OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: floor.nowAt } }],
    },
    select: {
      id: true,
      number: true,
      dropOffAt: true,
      handoverAt: true,
      vehicle: { select: { plate: true } },
    },
    orderBy: { dropOffAt: 'asc' },
  })
  const own = jobs.map(
    ({ id: jobId, vehicle, ...visit }): OtherVisit => ({ jobId, ...visit, plate: vehicle.plate }),
  )
  return [...own, ...(await otherLoans(tx, floor, id))].sort((a, b) => a.dropOffAt - b.dropOffAt)
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
  if (other.lent)
    return say('{lent} is lent with job {number}, {dropOffAt} to {handoverAt}', {
      lent: other.lent,
      number: other.number,
      dropOffAt: when(other.dropOffAt),
      handoverAt: when(other.handoverAt),
    })
  const car = other.plate || say('this vehicle')
  return say('{car} is here for job {number} already, {dropOffAt} to {handoverAt}', {
    car,
    number: other.number,
    dropOffAt: when(other.dropOffAt),
    handoverAt: when(other.handoverAt),
  })
}
