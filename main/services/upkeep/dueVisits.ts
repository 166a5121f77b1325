/** The list of due visits, a page at a time. */
import type { DueState } from '../../domain/upkeep/index.ts'
import { type OpenWhere, openCounts } from '../../store/planDueRows.ts'
import type { Desk } from '../desk/desk.ts'
import type { DueFilter, DueInput } from './inputs.ts'
import { keptPlans } from './kept.ts'
import { byDay, eachLater, failedPlans, followDue, laterVisits, openVisits } from './planDue.ts'
import { upkeepDay, type VisitView, visitViews } from './visits.ts'

export type DueView = Awaited<ReturnType<typeof dueVisits>>

/**
 * The first `limit` (200) of what is due between two days, and of all that is overdue, as the filter lets through; how many
 * there are of each state, projected visits not counted; and plans whose visits cannot be worked out, whatever the filter.
 */
export async function dueVisits(desk: Desk, input: DueInput) {
  const tx = desk.store.read
  const day = await upkeepDay(tx, desk.now())
  const behind = await followDue(desk, day)
  const { filter = {}, fromDate, toDate, limit = 200 } = input
  const { text, reachable, unbooked, ...simple } = filter
  const where = { ...simple, until: toDate, from: fromDate, orOverdue: true, today: day.today }
  // What asks for names, consent or bookings has to be read of every visit, all else only of those that are shown.
  const asksMore = text?.trim() || reachable || unbooked
  const open = await openVisits(tx, where, asksMore ? undefined : limit)
  const later = (await laterVisits(tx, day, where)).flatMap(({ kind, count, visits }) =>
    visits.filter(visit => letsLater(where, kind, visit)).map(({ dueOn }) => ({ dueOn, count })),
  )
  // A page that is full of open visits shows only what comes before its last.
  const last = !asksMore && open.length === limit ? open.at(-1)?.dueOn : undefined
  const shown = later.some(each => each.dueOn <= (last ?? toDate)) ? await eachLater(tx, day, where) : []
  const listed = [...open, ...shown.filter(visit => letsLater(where, visit.kind, visit))].sort(byDay)
  const page = asksMore ? listed : listed.slice(0, limit)
  const kept = await keptPlans(tx, { planIds: [...new Set(page.map(visit => visit.planId))] })
  const read = (await visitViews(tx, day, kept, page)).filter(visit => lets(filter, visit))
  const counts: Record<DueState, number> = { overdue: 0, due: 0, soon: 0, later: 0 }
  if (asksMore) for (const visit of read) counts[visit.state] += Number(!visit.projected)
  else for (const [state, count] of await openCounts(tx, where)) counts[state as DueState] = count
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0)
  return {
    today: day.today,
    zone: day.zone,
    /** How many plans are still as they were worked out before what changed since. */
    behind,
    counts,
    visits: read.slice(0, limit),
    /** How many there are, shown or not. */
    total: asksMore ? read.length : later.reduce((sum, each) => sum + each.count, all),
    failed: await failedPlans(tx, day, filter.vehicleId),
  }
}

/** Whether the filter lets a later visit through. */
function letsLater(
  { kinds, states, from = '' }: OpenWhere,
  kind: string,
  { dueOn, state }: Pick<VisitView, 'dueOn' | 'state'>,
): boolean {
  return (
    dueOn >= from && (!kinds?.length || kinds.includes(kind)) && (!states?.length || states.includes(state))
  )
}

function lets(filter: DueFilter, visit: VisitView): boolean {
  const text = filter.text?.trim().toLowerCase() ?? ''
  const said = `${visit.customerName} ${visit.plate} ${visit.vehicleWords} ${visit.title}`.toLowerCase()
  return (
    (text === '' || said.includes(text)) &&
    (!filter.reachable || visit.channels.length > 0) &&
    (!filter.unbooked || visit.booking === null)
  )
}
