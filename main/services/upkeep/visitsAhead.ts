import { visitKey } from '../../domain/upkeep/index.ts'
import { planNames, planTitles } from '../../store/planRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { aimsOf } from './aims.ts'
import { keptPlans } from './kept.ts'
import { byDay, eachLater, failedPlans, followDue, openVisits, overdueAimed } from './planDue.ts'
import type { UpkeepDay } from './visits.ts'
import { nextOf } from './workedOut.ts'

/**
 * The visits to come up to a day that are not booked, each on the day it is aimed at or due, and the plans that cannot be
 * worked out. With `details` each says whose it is and, the open one, why.
 */
export async function visitsAhead(
  desk: Desk,
  day: UpkeepDay,
  until: string,
  { details }: { details: boolean },
) {
  const tx = desk.store.read
  await followDue(desk, day)
  const where = { until, today: day.today }
  const { aimed, booked } = await aimsOf(tx, day.nowAt)
  const ahead = [
    ...(await openVisits(tx, { ...where, from: day.today })),
    ...(await overdueAimed(tx, day)),
    ...(await eachLater(tx, day, where)),
  ]
    .sort(byDay)
    .flatMap(({ planId, ruleOn, dueOn, projected }) => {
      const key = visitKey({ planId, ruleOn })
      const on = aimed.get(key)?.toDay ?? dueOn
      return booked.has(key) || on < day.today ? [] : [{ planId, ruleOn, on, projected }]
    })
  const planIds = ahead.map(visit => visit.planId)
  const names = details ? await planNames(tx, planIds) : null
  const titles = names ? null : await planTitles(tx, planIds)
  const open = ahead.filter(visit => !visit.projected).map(visit => visit.planId)
  const sentences = details ? await sentencesOf(tx, day, open) : null
  const visits = ahead.flatMap(({ planId, ruleOn, on, projected }) => {
    const its = names?.get(planId)
    const title = its?.title ?? titles?.get(planId)
    if (title === undefined) return []
    const whose = its ? `${its.plate} (${its.customerName})` : null
    return [
      { planId, ruleOn, on, title, whose, sentence: projected ? null : (sentences?.get(planId) ?? null) },
    ]
  })
  return { visits, failed: await failedPlans(tx, day) }
}

/** Why each plan's open visit is due then. */
async function sentencesOf(tx: Tx, day: UpkeepDay, planIds: string[]): Promise<Map<string, string>> {
  const kept = await keptPlans(tx, { planIds })
  return new Map(kept.map(each => [each.row.id, nextOf(each, day).sentence]))
}
