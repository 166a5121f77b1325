import type { Tx } from '../../store/store.ts'
import { dropStepDraws } from '../shelf/stepDraws.ts'
import { slotsOf } from './messageRows.ts'

/** Lets the held places of a message go; what was booked from it stays. */
export async function releaseSlots(
  tx: Tx,
  row: { readonly slots: unknown },
  nowAt: number,
  exceptJobId: string | null = null,
): Promise<void> {
  for (const { jobId } of slotsOf(row)) {
    if (jobId === exceptJobId) continue
    const { count } = await tx.job.updateMany({
      where: { id: jobId, status: 'held' },
      data: { status: 'cancelled', heldUntilAt: null, version: { increment: 1 } },
    })
    if (count === 0) continue
    await dropStepDraws(tx, [jobId])
    await tx.auditLine.create({
      data: { at: nowAt, who: 'reminder', act: 'released', entity: 'job', entityId: jobId, detail: {} },
    })
  }
}
