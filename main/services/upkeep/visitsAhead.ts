import { visitKey } from '../../domain/upkeep/index.ts'
import { planNames } from '../../store/planRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { aimsOf } from './aims.ts'
import { keptPlans } from './kept.ts'
import { byDay, eachLater, failedPlans, followDue, openVisits, overdueAimed } from './planDue.ts'
import type { UpkeepDay } from './visits.ts'
import { nextOf } from './workedOut.ts'

/**
 * The visits to come up to a day that are not booked, each on the day it is aimed at or due, with whose it is and, where
 * asked, why; and the plans that cannot be worked out.
 */
export async function visitsAhead(desk: Desk, day: UpkeepDay, until: string, { why }: { why: boolean }) {
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
  const names = await planNames(
    tx,
    ahead.map(visit => visit.planId),
  )
  const open = ahead.filter(visit => !visit.projected).map(visit => visit.planId)
  const sentences = why ? await sentencesOf(tx, day, open) : null
  const visits = ahead.flatMap(({ planId, ruleOn, on, projected }) => {
    const its = names.get(planId)
    return its
      ? [{ planId, ruleOn, on, ...its, sentence: projected ? null : (sentences?.get(planId) ?? null) }]
      : []
  })
  return { visits, failed: await failedPlans(tx, day) }
}

/** Why each plan's open visit is due then. */
async function sentencesOf(tx: Tx, day: UpkeepDay, planIds: string[]): Promise<Map<string, string>> {
  const kept = await keptPlans(tx, { planIds })
  return new Map(kept.map(each => [each.row.id, nextOf(each, day).sentence]))
}
