import { gridDown, gridUp } from '../../domain/calendar/index.ts'
import { promiseOf } from '../../domain/schedule/index.ts'
import { moveProblem, type Place, type RestOfJob, timesBetweenVisits } from '../floor/movePlan.ts'

/** How far from the wished place another one is looked for, in minutes. */
const farthestMin = 21 * 1440

/** Starts from one grid point to another, in one of the bays (null: any). */
interface Search {
  readonly bays: readonly string[] | null
  readonly from: number
  readonly to: number
}

/**
 * The feasible place nearest to the wished one: in the same bay, before or after; else the first in any bay after it,
 * else the last before it. Null where there is none within three weeks. What it finds, `planMove` takes.
 */
export function nearestPlace(rest: RestOfJob, wish: Place): Place | null {
  const { floor, earliestAt, latestAt } = rest
  const last = latestAt === null ? Number.POSITIVE_INFINITY : gridDown(floor, latestAt)
  const at = gridUp(floor, Math.max(wish.startAt, earliestAt))
  const end = Math.min(at - floor.gridMin, last)
  const bays = rest.bays === null || rest.bays.includes(wish.bayId) ? [wish.bayId] : rest.bays
  const after = firstPlace(rest, { bays, from: at, to: last })
  const reach = after === null ? farthestMin : after.startAt - wish.startAt
  const from = Math.max(earliestAt, gridUp(floor, wish.startAt - reach + 1))
  const before = lastPlace(rest, { bays, from, to: end })
  if (before && (!after || wish.startAt - before.startAt < after.startAt - wish.startAt)) return before
  return (
    after ??
    firstPlace(rest, { bays: rest.bays, from: at, to: last }) ??
    lastPlace(rest, { bays: rest.bays, from, to: end })
  )
}

/** The first start from which the rest of the job can be laid before its car is wanted for another job. */
function firstPlace(rest: RestOfJob, { bays, from, to }: Search): Place | null {
  for (const span of timesBetweenVisits(rest)) {
    const earliest = Math.max(from, gridUp(rest.floor, span.from))
    if (earliest > to || span.to <= earliest) continue
    const horizon = Math.min(earliest + farthestMin, span.to)
    const limits = { bays, from: earliest, to: Number.isFinite(to) ? to : null, horizon }
    const offer = promiseOf(moveProblem(rest, limits), 'askedDay')
    const first = offer.feasible ? offer.plan.steps[0] : undefined
    if (first) return { bayId: first.bay, startAt: first.start }
  }
  return null
}

/** The last such start, by halving: what is left to look through either still holds one or not. */
function lastPlace(rest: RestOfJob, { bays, from, to }: Search): Place | null {
  const { gridMin } = rest.floor
  let found = firstPlace(rest, { bays, from, to })
  if (!found) return null
  let low = found.startAt
  let high = to
  while (low < high) {
    const middle = low + Math.ceil((high - low) / gridMin / 2) * gridMin
    const later = firstPlace(rest, { bays, from: middle, to })
    if (later) {
      found = later
      low = later.startAt
    } else high = middle - gridMin
  }
  return found
}
