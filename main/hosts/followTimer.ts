import { say } from '../domain/language/index.ts'
import { besideDesk, endBeside } from '../services/desk/beside.ts'
import type { Desk } from '../services/desk/desk.ts'
import { findShop } from '../services/desk/shopView.ts'
import { speakingForShop } from '../services/desk/speaking.ts'
import { followCosts } from '../services/shelf/costs.ts'
import { followDue } from '../services/upkeep/planDue.ts'
import { upkeepDay } from '../services/upkeep/visits.ts'

const everyMs = 60_000
/** Not while the first screen is still being drawn. */
const firstAfterMs = 5_000

const following = besideDesk<void>(() => say('What was changed could not be followed.'))

/**
 * Follows every minute, in pieces beside the desk, what is kept of plans and of costs: after a migration, a change of the
 * shop's hours or a night, no screen waits for all of it. Returns the way to stop, before the store is closed.
 */
export function startFollowing(desk: Desk, onFault: (error: unknown) => void): () => Promise<void> {
  const look = () =>
    following.begin(desk.store, async pace => {
      try {
        if (!(await findShop(desk.store.read))) return
        await speakingForShop(desk, async () => {
          const day = await upkeepDay(desk.store.read, desk.now())
          await followDue(desk, day, Number.POSITIVE_INFINITY, pace)
          await followCosts(desk, pace)
        })
      } catch (error) {
        onFault(error)
      }
    })
  const first = setTimeout(look, firstAfterMs)
  const timer = setInterval(look, everyMs)
  first.unref()
  timer.unref()
  return () => {
    clearTimeout(first)
    clearInterval(timer)
    return endBeside(desk.store)
  }
}
