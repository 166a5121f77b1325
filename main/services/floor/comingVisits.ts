import { momentWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { comingJobs, jobWords } from './comingJobs.ts'

/** A line for each job of a customer or of one vehicle that is booked or in the shop. */
export async function comingVisits(
  tx: Tx,
  whose: { customerId: string } | { vehicleId: string },
  nowAt: number,
): Promise<string[]> {
  const { zone } = await shopOf(tx)
  return (await comingJobs(tx, nowAt))
    .filter(job =>
      'customerId' in whose ? job.customerId === whose.customerId : job.vehicleId === whose.vehicleId,
    )
    .map(job =>
      say('{job}: {dropOffAt} to {handoverAt}', {
        job: jobWords(job),
        dropOffAt: momentWords(job.dropOffAt, zone),
        handoverAt: momentWords(job.handoverAt, zone),
      }),
    )
}
