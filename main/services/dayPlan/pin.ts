import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { assertFresh } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { PinInput } from './inputs.ts'

/** Pins a booked car where it is, so that no laying of the floor moves it, or lets it go again. */
export function pinJob(desk: Desk, { id, version, pinned }: PinInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    const job = found(
      await tx.job.findUnique({ where: { id }, select: { status: true, number: true } }),
      { id },
      say('This job is not there; look at the board again.'),
    )
    if (job.status !== 'booked')
      refuse(
        'not-booked',
        { id },
        say('Job {number} is not waiting for its car, so it stays where it is anyway.', {
          number: job.number,
        }),
      )
    const { count } = await tx.job.updateMany({
      where: { id, version },
      data: { pinned, version: { increment: 1 } },
    })
    assertFresh(count, 'job', id)
    audit({ act: pinned ? 'pinned' : 'unpinned', entity: 'job', entityId: id })
  })
}
