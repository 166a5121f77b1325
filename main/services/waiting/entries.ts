/** Who waits for a place: listed, and taken off. */
import { dateOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { releasePlaceIn } from '../booking/booking.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowSeen } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { vehicleInUse } from '../records/vehicles.ts'
import type { WaitInput } from './inputs.ts'

/** More than anybody would ring: the oldest come first. */
export const mostWaiting = 200

const withAll = { customer: true, vehicle: true, heldJob: true } as const

export type Entry = Awaited<ReturnType<typeof waitingEntries>>[number]

/** Those who wait, whoever came first leading. */
export function waitingEntries(tx: Tx) {
  return tx.waitingEntry.findMany({
    where: { outcome: null },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    take: mostWaiting,
    include: withAll,
  })
}

/** Puts a car on the list. */
export function addWaiting(desk: Desk, input: WaitInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, nowAt) => {
    const { vehicleId, fromOn, toOn } = input
    const { customerId } = await vehicleInUse(tx, vehicleId)
    const today = dateOf(nowAt, (await shopOf(tx)).zone)
    if (toOn < today || toOn < fromOn)
      refuse('days-bad', { toOn }, say('Give a last day that is to come, and not before the first.'))
    if ((await tx.waitingEntry.count({ where: { outcome: null } })) >= mostWaiting)
      refuse(
        'too-many',
        { vehicleId },
        say('There are {mostWaiting} on the list; take some off first.', { mostWaiting }),
      )
    const note = checkNote(input.note, 'note', 400)
    const weekdays = [...new Set(input.weekdays)].sort()
    const { id } = await tx.waitingEntry.create({
      data: { ...input, weekdays, note, customerId, createdAt: nowAt },
    })
    audit({ act: 'listed', entity: 'waiting', entityId: id, detail: { vehicleId, fromOn, toOn } })
    return { id }
  })
}

/** Takes somebody off the list; what is held for them is let go. */
export function removeWaiting(desk: Desk, seen: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, nowAt) => {
    await endWaiting(tx, seen, { outcome: 'gone', endedAt: nowAt })
    const row = await tx.waitingEntry.findUniqueOrThrow({
      where: { id: seen.id },
      include: { heldJob: true },
    })
    if (row.heldJob?.status === 'held')
      await releasePlaceIn(tx, audit, { jobId: row.heldJob.id, version: row.heldJob.version })
    audit({ act: 'taken off', entity: 'waiting', entityId: seen.id, detail: { vehicleId: row.vehicleId } })
  })
}

/** Changes an entry that still waits. @throws Refusal `stale` where somebody else changed it first. */
export async function endWaiting(
  tx: Tx,
  { id, version }: RowSeen,
  data: { outcome?: string; endedAt?: number; heldJobId?: string | null; askedAt?: number | null },
): Promise<void> {
  const { count } = await tx.waitingEntry.updateMany({
    where: { id, version, outcome: null },
    data: { ...data, version: { increment: 1 } },
  })
  assertFresh(count, 'waiting entry', id)
}
