/** The morning batch: every visit whose reminder is due, with a draft, or with why none was written. */
import { dateOf } from '../../domain/calendar/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import type { Channel } from '../../domain/upkeep/index.ts'
import type { Desk } from '../desk/desk.ts'
import { keptPlans } from '../upkeep/kept.ts'
import { failedPlans, followDue, visitsToRemind } from '../upkeep/planDue.ts'
import { getVisit } from '../upkeep/plans.ts'
import { type UpkeepRules, upkeepRules } from '../upkeep/settings.ts'
import { type UpkeepDay, upkeepDay, type VisitView, visitViews } from '../upkeep/visits.ts'
import type { WriteInput } from './inputs.ts'
import { isUnderWay, writeReminder } from './writeReminder.ts'

/** Writes the drafts that are due this morning. Asked again the same day it writes no visit's draft twice. */
export async function prepareBatch(desk: Desk) {
  const { wanted, notWritten } = await dueForReminder(desk)
  let written = 0
  for (const { visit, channel } of wanted)
    try {
      await writeReminder(desk, visit, channel)
      written++
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      notWritten.push(reasonOf(visit, error.message))
    }
  return { written, notWritten }
}

/** The visits a reminder is due for now, one an owner, and those that would be due but for a reason, in words. */
export async function dueForReminder(desk: Desk) {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const rules = await upkeepRules(tx)
  const until = Temporal.PlainDate.from(day.today)
    .add({ days: rules.leadDays + 60 })
    .toString()
  await followDue(desk, day)
  const found = await visitsToRemind(tx, { until, today: day.today }, rules.maxTries)
  const kept = await keptPlans(tx, { planIds: found.open.map(visit => visit.planId) })
  const visits = await visitViews(tx, day, kept, found.open)
  const wanted: { visit: VisitView; channel: Channel }[] = []
  const notWritten: ReturnType<typeof reasonOf>[] = []
  const owners = new Set(found.owners)
  for (const visit of visits) {
    if (!timeFor(visit, rules, day)) continue
    const why = owners.has(visit.customerId)
      ? 'Another message to this owner is written already: one at a time.'
      : visit.channels.length === 0
        ? 'The owner has not agreed to be reached in any way there is an address for.'
        : null
    if (why !== null) {
      notWritten.push(reasonOf(visit, why))
      continue
    }
    owners.add(visit.customerId)
    wanted.push({ visit, channel: channelFor(visit) })
  }
  return { wanted, notWritten, failed: await failedPlans(tx, day) }
}

/** Whether it is time to write about a visit, the first time or again. */
function timeFor(
  visit: VisitView,
  { leadDays, againDays, maxTries }: UpkeepRules,
  { today, zone }: UpkeepDay,
): boolean {
  const { reminder, targetOn, dueOn, projected, booking, closedBecause } = visit
  if (projected || booking || closedBecause !== null) return false
  if (!reminder) return daysBefore(targetOn ?? dueOn, leadDays) <= today
  if (isUnderWay(reminder) || reminder.tryNo >= maxTries) return false
  if (reminder.outcome === 'booked') return true
  if (reminder.nextTryOn !== null) return reminder.nextTryOn <= today
  return reminder.sentAt !== null && dateOf(reminder.sentAt, zone) <= daysBefore(today, againDays)
}

function daysBefore(on: string, days: number): string {
  return Temporal.PlainDate.from(on).subtract({ days }).toString()
}

/** E-mail first; on later tries another way, where the owner agrees to one. */
function channelFor({ channels, reminder }: VisitView): Channel {
  const ways = (['email', 'text', 'call', 'letter'] as const).filter(each => channels.includes(each))
  return ways[(reminder?.tryNo ?? 0) % ways.length] ?? 'email'
}

function reasonOf(visit: VisitView, why: string) {
  const { planId, ruleOn, title, plate, customerName } = visit
  return { planId, ruleOn, title, plate, customerName, why }
}

/** Writes one visit's reminder because the desk says so, whatever the morning would do. */
export async function writeOne(desk: Desk, input: WriteInput): Promise<{ id: string }> {
  const visit = await getVisit(desk, input)
  if (visit.booking)
    refuse('booked', { ruleOn: input.ruleOn }, `This visit is booked as job ${visit.booking.jobNumber}.`)
  if (isUnderWay(visit.reminder))
    refuse(
      'stale',
      { ruleOn: input.ruleOn },
      'A reminder of this visit is written already; look at the batch.',
    )
  return writeReminder(desk, visit, input.channel, input.templateId)
}
