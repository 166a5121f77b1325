import {
  amongOthers,
  checkPlan,
  type FloorPlan,
  findCircle,
  transfersOf,
  type Violation,
} from '../schedule/index.ts'
import type { RelayTask } from './relayTask.ts'

/** The floor with the cars `accepted` where the plan puts them and all others where they stand. */
export function acceptedPlan(
  { present }: RelayTask,
  plan: FloorPlan,
  accepted: ReadonlySet<string>,
): FloorPlan {
  const ids = [...new Set([...Object.keys(present), ...accepted])]
  return Object.fromEntries(
    ids.flatMap(id => {
      const own = accepted.has(id) ? plan[id] : present[id]
      return own ? [[id, own]] : []
    }),
  )
}

export interface Objection {
  readonly jobId: string
  /** Empty: it would change places with others, and none of them could be the first. */
  readonly violations: readonly Violation[]
}

/** What stands against the cars `ids` in a plan of the whole floor, by the checks every plan passes before it is kept. */
export function objections({ floor }: RelayTask, plan: FloorPlan, ids: Iterable<string>): Objection[] {
  const asked = new Set(ids)
  const found = floor.jobs
    .filter(job => asked.has(job.id) && plan[job.id])
    .map(job => ({
      jobId: job.id,
      violations: checkPlan(amongOthers(floor, plan, job), plan[job.id]!),
    }))
    .filter(({ violations }) => violations.length > 0)
  if (found.length > 0) return found
  const [first] = asked
  return first !== undefined && findCircle(transfersOf(plan)) ? [{ jobId: first, violations: [] }] : []
}
