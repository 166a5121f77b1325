import { promise } from '../../domain/schedule/index.ts'
import { gridDown, gridUp } from '../floor/floorGrid.ts'
import { type MoveGround, moveCase, type Place } from '../floor/movePlan.ts'

/** How far from the wished place another one is looked for, in minutes. */
const farthestMin = 21 * 1440

/**
 * The feasible place nearest to the wished one: in the same bay, before or after; else the first in any bay after it.
 * Null where there is none within three weeks.
 */
export function nearestPlace(ground: MoveGround, wish: Place): Place | null {
  const { floor, earliestAt, latestAt } = ground
  const at = gridUp(floor, Math.max(wish.startAt, earliestAt))
  const last = latestAt === null ? null : gridDown(floor, latestAt)
  const here = ground.bays === null || ground.bays.includes(wish.bayId) ? [wish.bayId] : ground.bays
  const after = firstPlace(ground, here, at, last)
  const reach = after === null ? farthestMin : after.startAt - wish.startAt
  const before = lastPlace(ground, here, Math.max(earliestAt, gridUp(floor, wish.startAt - reach + 1)), at)
  if (before && (!after || wish.startAt - before.startAt < after.startAt - wish.startAt)) return before
  return after ?? firstPlace(ground, ground.bays, at, last)
}

/** The first place of `[from, to]` in one of the bays (null: any) from which the rest of the job can be laid. */
function firstPlace(
  ground: MoveGround,
  bays: readonly string[] | null,
  from: number,
  to: number | null,
): Place | null {
  if (to !== null && from > to) return null
  const offer = promise(moveCase(ground, { bays, from, to, horizon: from + farthestMin })).askedDay
  const first = offer.feasible ? offer.plan.steps[0]! : null
  return first && { bayId: first.bay, startAt: first.start }
}

/** The last such place of `[from, to)`, by halving: what is left to look through either still holds one or not. */
function lastPlace(ground: MoveGround, bays: readonly string[], from: number, to: number): Place | null {
  const { gridMin } = ground.floor
  const end = to - gridMin
  let found = from <= end ? firstPlace(ground, bays, from, end) : null
  if (!found) return null
  let low = found.startAt
  let high = end
  while (low < high) {
    const middle = low + Math.ceil((high - low) / gridMin / 2) * gridMin
    const later = firstPlace(ground, bays, middle, end)
    if (later) {
      found = later
      low = later.startAt
    } else high = middle - gridMin
  }
  return found
}
