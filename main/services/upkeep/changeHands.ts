/** A car goes to another owner on a day. */

import { dayWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse, withField } from '../../domain/refusal.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import type { RowSeen } from '../desk/keep.ts'
import { comingJobs, handoverLines } from '../floor/comingJobs.ts'
import { writeCustomer } from '../records/customers.ts'
import type { HandsInput } from './inputs.ts'
import { stopMessages } from './stopMessages.ts'
import { upkeepDay } from './visits.ts'

/**
 * Its coats, plans and looks go with it, and visits not begun are the new owner's, who is asked about first. The visits
 * until then stay with whoever had it. What waited to be sent is withdrawn, and what the former owner answered to a
 * reminder says nothing of the new one, who is written to only by their own consent.
 */
export function changeHands(desk: Desk, input: HandsInput): Promise<RowSeen & { customerId: string }> {
  return act(desk, async (tx, audit, at) => {
    const { vehicleId, version, accepted } = input
    const { today } = await upkeepDay(tx, at)
    const onDay = input.on ?? today
    const car = found(
      await tx.vehicle.findFirst({ where: { id: vehicleId, archivedAt: null } }),
      { vehicleId },
      say('This car is put away or not there; take it back first.'),
    )
    const fromId = car.customerId
    const toId = await ownerOf(tx, audit, input)
    if (toId === fromId)
      refuse('same', { 'to.customerId': toId }, say('It is theirs already; choose whoever has it now.'))
    await checkDay(tx, vehicleId, onDay, today)
    await stopMessages(tx, at, { vehicleId }, say('The car has a new owner.'))
    const coming = (await comingJobs(tx, at, { vehicleId })).filter(job => job.arrivedAt === null)
    askFirst('touches-bookings', await handoverLines(tx, coming), {
      field: 'vehicleId',
      lead: say(
        'These visits go over to the new owner, at the price agreed; tell them, or cancel what they do not want:',
      ),
      accepted,
    })
    const jobs = coming.map(({ id }) => id)
    await tx.job.updateMany({
      where: { id: { in: jobs } },
      data: { customerId: toId, version: { increment: 1 } },
    })
    // Sold to somebody unknown, it had nothing to come any more; now it is known whose it is.
    await tx.upkeepEntry.updateMany({
      where: { vehicleId, what: 'sold', voidedAt: null },
      data: { voidedAt: at },
    })
    const { count } = await tx.vehicle.updateMany({
      where: { id: vehicleId, version },
      data: { customerId: toId, version: { increment: 1 } },
    })
    assertFresh(count, 'vehicle', vehicleId)
    await tx.ownerChange.create({ data: { vehicleId, fromId, toId, onDay, at, who: desk.who } })
    audit({
      act: 'changed hands',
      entity: 'vehicle',
      entityId: vehicleId,
      detail: { fromId, toId, onDay, ...(jobs.length > 0 && { visits: jobs.length }) },
    })
    return { id: vehicleId, version: version + 1, customerId: toId }
  })
}

/** Somebody on file, or somebody new, who is written down in the same act. */
async function ownerOf(tx: Tx, audit: Audit, { to, accepted }: HandsInput): Promise<string> {
  if ('customerId' in to) {
    const { id } = found(
      await tx.customer.findFirst({ where: { id: to.customerId, archivedAt: null } }),
      { 'to.customerId': to.customerId },
      say('This customer is put away or not there; look them up again.'),
    )
    return id
  }
  try {
    return (await writeCustomer(tx, audit, { ...to.customer, accepted })).id
  } catch (error) {
    throw withField(error, field => `to.customer.${field}`)
  }
}

/** A car changes hands when it does, and never before it did so last. */
async function checkDay(tx: Tx, vehicleId: string, on: string, today: string): Promise<void> {
  if (on > today)
    refuse(
      'to-come',
      { on },
      say('{on} is still to come; enter it once the car is theirs.', { on: dayWords(on) }),
    )
  const last = await tx.ownerChange.findFirst({ where: { vehicleId }, orderBy: [{ onDay: 'desc' }] })
  if (last && on < last.onDay)
    refuse(
      'before-last',
      { on },
      say('It changed hands on {onDay} already; give a later day.', { onDay: dayWords(last.onDay) }),
    )
}

/** Whose a car was, newest change first. */
export async function ownersOf(tx: Tx, vehicleId: string) {
  const rows = await tx.ownerChange.findMany({
    where: { vehicleId },
    orderBy: [{ onDay: 'desc' }, { id: 'desc' }],
    take: 50,
    include: { from: { select: { name: true } }, to: { select: { name: true } } },
  })
  return rows.map(({ id, fromId, toId, onDay, from, to }) => ({
    id,
    onDay,
    fromId,
    fromName: from.name,
    toId,
    toName: to.name,
  }))
}
