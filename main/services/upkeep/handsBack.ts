/** A change of hands that was entered wrongly, taken back. */

import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowAccepted } from '../desk/inputs.ts'
import type { RowSeen } from '../desk/keep.ts'
import { comingJobs, handoverLines } from '../floor/comingJobs.ts'
import { stopMessages } from './stopMessages.ts'

/**
 * The car is its former owner's again, with the visits not begun, which are asked about first; that it was sold stands
 * again where the change had done away with it. Once it was worked on for the new owner, or they were sent a bill, it was
 * theirs: then it changes hands again on a day.
 */
export function takeHandsBack(desk: Desk, input: RowAccepted): Promise<RowSeen & { customerId: string }> {
  return act(desk, async (tx, audit, at) => {
    const { id: vehicleId, version, accepted } = input
    const change = found(
      await tx.ownerChange.findFirst({
        where: { vehicleId, vehicle: { archivedAt: null } },
        orderBy: [{ onDay: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        include: { from: { select: { name: true, archivedAt: true } }, to: { select: { name: true } } },
      }),
      { id: vehicleId },
      say('This car has not changed hands, or is put away; look at it again.'),
    )
    const { fromId, toId } = change
    if (change.from.archivedAt !== null)
      refuse(
        'gone',
        { id: vehicleId },
        say('{name} is put away; take them back first, or give the car another owner.', {
          name: change.from.name,
        }),
      )
    await assertUnused(tx, { vehicleId, toId, toName: change.to.name })
    await stopMessages(tx, at, { vehicleId }, say('The change of owner was taken back.'))
    const coming = await comingJobs(tx, at, { vehicleId, customerId: toId })
    askFirst('touches-bookings', await handoverLines(tx, coming), {
      field: 'id',
      lead: say('These visits go back to {name}:', { name: change.from.name }),
      accepted,
    })
    await tx.job.updateMany({
      where: { id: { in: coming.map(({ id }) => id) } },
      data: { customerId: fromId, version: { increment: 1 } },
    })
    await tx.upkeepEntry.updateMany({
      where: { vehicleId, what: 'sold', voidedAt: change.at },
      data: { voidedAt: null },
    })
    const { count } = await tx.vehicle.updateMany({
      where: { id: vehicleId, version },
      data: { customerId: fromId, version: { increment: 1 } },
    })
    assertFresh(count, 'vehicle', vehicleId)
    await tx.ownerChange.delete({ where: { id: change.id } })
    audit({
      act: 'change of hands taken back',
      entity: 'vehicle',
      entityId: vehicleId,
      detail: { fromId: toId, toId: fromId, onDay: change.onDay },
    })
    return { id: vehicleId, version: version + 1, customerId: fromId }
  })
}

/** Refuses where the car came for its new owner, or they were billed for it. */
async function assertUnused(
  tx: Tx,
  { vehicleId, toId, toName }: { vehicleId: string; toId: string; toName: string },
): Promise<void> {
  const used = await tx.job.findFirst({
    where: {
      vehicleId,
      customerId: toId,
      OR: [{ arrivedAt: { not: null } }, { invoices: { some: {} } }],
    },
    select: { number: true },
  })
  if (used)
    refuse(
      'used',
      { id: vehicleId },
      say(
        'Job {number} was done or billed for {name}: the car was theirs. Give it its new owner on a day instead.',
        {
          number: used.number,
          name: toName,
        },
      ),
    )
}
