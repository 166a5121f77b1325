/** Whose reminder is due, decided from what is kept of each visit; names and words are read only of those shown. */

import { dateOf, dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { type Channel, visitKey } from '../../domain/upkeep/index.ts'
import { type RemindRow, remindRows } from '../../store/planDueRows.ts'
import { planNames } from '../../store/planRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Pace } from '../desk/beside.ts'
import type { Desk } from '../desk/desk.ts'
import { aimsOf } from '../upkeep/aims.ts'
import { followDue } from '../upkeep/planDue.ts'
import { openChannels, reachOf } from '../upkeep/reach.ts'
import { closedWords } from '../upkeep/reminded.ts'
import { type UpkeepRules, upkeepRules } from '../upkeep/settings.ts'
import { type UpkeepDay, upkeepDay } from '../upkeep/visits.ts'
import { isUnderWay } from './writeReminder.ts'

/** How far ahead of the usual time a visit may be aimed, in days. */
const aimedAheadDays = 60

interface NotWanted {
  readonly visit: RemindRow
  readonly why: string
}

/**
 * The visits a reminder is due for now, one an owner, and those that would be due but for a reason, in words; `behind`:
 * how many plans are still as they were worked out before what changed since, where `mostWaited` is not waited for.
 */
export async function dueForReminder(desk: Desk, mostWaited?: number, pace?: Pace) {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const rules = await upkeepRules(tx)
  const behind = await followDue(desk, day, mostWaited, pace)
  const leadOn = dayAfter(day.today, rules.leadDays)
  const until = dayAfter(leadOn, aimedAheadDays)
  const { aimed, booked } = await aimsOf(tx, day.nowAt)
  const rows = await remindRows(tx, { until, leadOn, aimed: [...aimed.values()].map(({ planId }) => planId) })
  const owners = new Set(rows.filter(row => isUnderWay(row.reminder)).map(row => row.customerId))
  const timely = rows.filter(
    row =>
      !booked.has(visitKey(row)) &&
      timeFor(row, aimed.get(visitKey(row))?.toDay ?? row.dueOn, leadOn, rules, day),
  )
  const reach = await reachOf(
    tx,
    timely.map(row => row.customerId).filter(id => !owners.has(id)),
  )
  const wanted: { visit: RemindRow; channel: Channel }[] = []
  const notWanted: NotWanted[] = []
  for (const visit of timely) {
    if (owners.has(visit.customerId)) {
      notWanted.push({ visit, why: say('Another message to this owner is written already: one at a time.') })
      continue
    }
    const owner = reach.get(visit.customerId)
    const ways = owner ? openChannels(owner, day.nowAt) : []
    if (ways.length === 0) {
      const why = say('The owner has not agreed to be reached in any way there is an address for.')
      notWanted.push({ visit, why })
      continue
    }
    owners.add(visit.customerId)
    wanted.push({ visit, channel: channelFor(ways, visit.reminder?.tryNo ?? 0) })
  }
  return { wanted, notWanted, behind }
}

/** Whether it is time to write about a visit that is not booked, the first time or again. */
function timeFor(
  { reminder }: RemindRow,
  onDay: string,
  leadOn: string,
  { againDays, maxTries }: UpkeepRules,
  { today, zone }: UpkeepDay,
): boolean {
  if (!reminder) return onDay <= leadOn
  if (closedWords(reminder, maxTries) !== null) return false
  if (isUnderWay(reminder) || reminder.tryNo >= maxTries) return false
  if (reminder.outcome === 'booked') return true
  if (reminder.nextTryOn !== null) return reminder.nextTryOn <= today
  return reminder.sentAt !== null && dateOf(reminder.sentAt, zone) <= dayAfter(today, -againDays)
}

function dayAfter(on: string, days: number): string {
  return dateOfDay(dayNumber(on) + days)
}

/** E-mail first; on later tries another way, where the owner agrees to one. */
function channelFor(channels: readonly Channel[], tries: number): Channel {
  const ways = (['email', 'text', 'call', 'letter'] as const).filter(each => channels.includes(each))
  return ways[tries % ways.length] ?? 'email'
}

/** Nobody mends more of them from one list. */
export const mostNotWanted = 200

/** Why visits are not written about, each with its title, car and owner. */
export async function notWantedViews(tx: Tx, lines: readonly NotWanted[]) {
  const names = await planNames(
    tx,
    lines.map(({ visit }) => visit.planId),
  )
  return lines.flatMap(({ visit: { planId, ruleOn }, why }) => {
    const its = names.get(planId)
    return its ? [{ planId, ruleOn, ...its, why }] : []
  })
}
