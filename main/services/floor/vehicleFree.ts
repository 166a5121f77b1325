import type { Tx } from '../../store/store.ts'
import type { Named } from '../desk/shopWords.ts'
import { minuteWords } from '../desk/shopWords.ts'

export interface Visit {
  readonly vehicleId: string
  /** This job itself is no other visit. */
  readonly exceptJobId: string
  readonly dropOffAt: number
  readonly handoverAt: number
}

/** Why a vehicle cannot be here then, in words: it is here for another job already. Null: it can. */
export async function otherVisit(tx: Tx, shop: Named, visit: Visit): Promise<string | null> {
  const other = await tx.job.findFirst({
    where: {
      vehicleId: visit.vehicleId,
      id: { not: visit.exceptJobId },
      dropOffAt: { lt: visit.handoverAt },
      handoverAt: { gt: visit.dropOffAt },
      OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: shop.nowAt } }],
    },
    select: { number: true, dropOffAt: true, handoverAt: true, vehicle: { select: { plate: true } } },
    orderBy: { dropOffAt: 'asc' },
  })
  if (!other) return null
  const when = (at: number) => minuteWords(at, shop.zone, shop.nowAt)
  const car = other.vehicle.plate || 'this vehicle'
  return `${car} is here for job ${other.number} already, ${when(other.dropOffAt)} to ${when(other.handoverAt)}`
}
