import { carOwners } from '../../store/planRows.ts'
import type { Desk } from '../desk/desk.ts'
import { keptPlans } from './kept.ts'
import { byDay, eachLater, failedPlans, followDue, openVisits, overdueAimed } from './planDue.ts'
import { bookingsOf, type UpkeepDay } from './visits.ts'
import { nextOf } from './workedOut.ts'

/**
 * The visits to come up to a day that are not booked, each on the day it is aimed at or due, with whose it is and why;
 * and the plans that cannot be worked out.
 */
export async function visitsAhead(desk: Desk, day: UpkeepDay, until: string) {
  const tx = desk.store.read
  await followDue(desk, day)
  const where = { until, today: day.today }
  const listed = [
    ...(await openVisits(tx, { ...where, from: day.today })),
    ...(await overdueAimed(tx, day)),
    ...(await eachLater(tx, day, where)),
  ].sort(byDay)
  const kept = await keptPlans(tx, { planIds: [...new Set(listed.map(visit => visit.planId))] })
  const byPlan = new Map(kept.map(each => [each.row.id, each]))
  const bookings = await bookingsOf(tx, day.nowAt, kept)
  const owners = await carOwners(
    tx,
    kept.map(each => each.row.vehicleId),
  )
  const visits = listed.flatMap(({ planId, ruleOn, dueOn, projected }) => {
    const its = byPlan.get(planId)
    const owner = its && owners.get(its.row.vehicleId)
    if (!owner || bookings.has(its.booked.get(ruleOn) ?? '')) return []
    const on = its.aimed.get(ruleOn) ?? dueOn
    if (on < day.today) return []
    const sentence = projected ? null : nextOf(its, day).sentence
    return { planId, ruleOn, on, title: its.plan.title, ...owner, sentence }
  })
  return { visits, failed: await failedPlans(tx, day) }
}
