/** What the gate decides from: everything known about a message's owner, car, visit and the day, read in one place. */
import { addDays, dateOf, startOfDay } from '../../domain/calendar/index.ts'
import type { PastSend, SendQuestion } from '../../domain/upkeep/index.ts'
import type { Message } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { carTimes, keptPlans } from '../upkeep/kept.ts'
import { outboxOf } from '../upkeep/messageRows.ts'
import { addressKey, reachOf } from '../upkeep/reach.ts'
import { sendRules, upkeepRules } from '../upkeep/settings.ts'
import { bookingsOf, upkeepDay } from '../upkeep/visits.ts'
import { nextOf } from '../upkeep/workedOut.ts'

/** The question whether a message may go out now. */
export async function sendQuestion(tx: Tx, row: Message, nowAt: number): Promise<SendQuestion> {
  const { zone } = await shopOf(tx)
  const upkeep = await upkeepRules(tx)
  const rules = await sendRules(tx, upkeep)
  const reach = (await reachOf(tx, [row.customerId])).get(row.customerId)
  const { soldOn } = await carTimes(tx, row.vehicleId)
  const vehicle = await tx.vehicle.findUnique({ where: { id: row.vehicleId }, include: { customer: true } })
  // A car or owner put away is gone for good as far as letters are concerned; so is a car that changed hands.
  const gone =
    !vehicle ||
    vehicle.archivedAt !== null ||
    vehicle.customer.archivedAt !== null ||
    vehicle.customerId !== row.customerId
  return {
    message: outboxOf(row),
    consents: reach?.consents ?? [],
    soldAt: gone ? nowAt : soldOn === null ? null : startOfDay(soldOn, zone),
    visitOpen: await isOpen(tx, row, nowAt),
    sends: await pastSends(tx, row, nowAt, rules.gapDays, zone),
    bounced: (await tx.bounce.findMany({ where: { address: addressKey(row.address), voidedAt: null } })).map(
      each => each.address,
    ),
    rules,
    ownerZone: reach?.owner.zone ?? zone,
    shopZone: zone,
    nowAt,
  }
}

/** Whether the visit still waits to be booked: it is its plan's open one, has no booking, and nobody said no to it. */
async function isOpen(tx: Tx, row: Message, nowAt: number): Promise<boolean> {
  const [kept] = await keptPlans(tx, { planIds: [row.planId] })
  if (!kept) return false
  const next = nextOf(kept, await upkeepDay(tx, nowAt))
  // One that gives no day any more because the car was sold is left to the rule about sold cars, which says so.
  if (next.dueOn === null ? next.because !== 'sold' : next.ruleOn !== row.ruleOn) return false
  const bookings = await bookingsOf(tx, nowAt, [kept])
  if (bookings.has(kept.booked.get(row.ruleOn) ?? '')) return false
  const { planId, ruleOn, customerId } = row
  // What a former owner said holds for them alone.
  return (
    (await tx.message.count({ where: { planId, ruleOn, customerId, outcome: { in: ['no', 'sold'] } } })) === 0
  )
}

/** What went out, or may have, that counts for the gap between two messages and for the day's limit. */
async function pastSends(
  tx: Tx,
  row: Message,
  nowAt: number,
  gapDays: number,
  zone: string,
): Promise<PastSend[]> {
  const select = {
    id: true,
    mailId: true,
    customerId: true,
    planId: true,
    ruleOn: true,
    channel: true,
  } as const
  const [today, own] = await Promise.all([
    tx.message.findMany({
      where: { sentAt: { gte: startOfDay(dateOf(nowAt, zone), zone) } },
      select: { ...select, sentAt: true },
    }),
    tx.message.findMany({
      where: {
        customerId: row.customerId,
        OR: [
          { sentAt: { gte: addDays(nowAt, -gapDays - 1, zone) } },
          { sentAt: null, OR: [{ unanswered: { gt: 0 } }, { state: 'sending' }] },
        ],
      },
      select: { ...select, sentAt: true },
    }),
  ])
  const all = new Map([...today, ...own].map(each => [each.id, each]))
  return [...all.values()].map(({ mailId, customerId, planId, ruleOn, channel, sentAt }) => ({
    messageId: mailId,
    personId: customerId,
    visitId: `${planId} ${ruleOn}`,
    channel: channel as PastSend['channel'],
    // One that may have gone out counts from now: its moment is not known.
    at: sentAt ?? nowAt,
  }))
}
