import { visitKey } from '../../domain/upkeep/index.ts'
import { aimRows } from '../../store/planDueRows.ts'
import type { Tx } from '../../store/store.ts'
import { standingBookings } from './visits.ts'

/**
 * Where visits that are open or come later are aimed, which of them were agreed with the owner for a day, and which are
 * booked, by `visitKey`.
 */
export async function aimsOf(tx: Tx, nowAt: number) {
  const aimed = new Map<string, { planId: string; toDay: string }>()
  const agreed = new Set<string>()
  const jobs = new Map<string, string>()
  for (const { planId, ruleOn, what, toDay, jobId } of await aimRows(tx)) {
    const key = visitKey({ planId, ruleOn })
    if (what === 'booked') {
      if (jobId !== null) jobs.set(key, jobId)
    } else if (toDay !== null) {
      if (what === 'aimed') aimed.set(key, { planId, toDay })
      else {
        agreed.add(key)
        // A day agreed with the owner ends what the spread had aimed at.
        aimed.delete(key)
      }
    }
  }
  const standing = await standingBookings(tx, nowAt, [...jobs.values()])
  const booked = new Set([...jobs].flatMap(([key, jobId]) => (standing.has(jobId) ? [key] : [])))
  return { aimed, agreed, booked }
}
