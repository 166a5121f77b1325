/** Two cars whose coats were laid shortly before now, whatever the hour, so that the board shows cures under way. */
import { firstOpenAt, gridDown, gridUp } from '../../domain/calendar/index.ts'
import { type FloorJob, problemOf } from '../../domain/floor/index.ts'
import { type Plan, promiseOf, type Step } from '../../domain/schedule/index.ts'
import type { LaidStep } from '../../domain/treatment/index.ts'
import type { Floor } from '../floor/floor.ts'

/** How far back the coat may have been laid, in minutes: as late as the hours allow. */
const windows = [4, 8, 24, 48, 72, 96].map(hours => hours * 60)

/**
 * A plan whose last coat is done by `nowAt`, the later the better, and whose car is fetched some time after it:
 * `fetchedMin` minutes from now at the earliest.
 */
export function curingPlan(
  floor: Floor,
  jobs: readonly FloorJob[],
  steps: readonly LaidStep[],
  nowAt: number,
  fetchedMin: number,
): Plan | null {
  const ground = { ...floor, jobs }
  const coat = steps.findLastIndex(step => step.kind === 'work' && step.stage === 'coat')
  const startTo = gridDown(floor, nowAt) - steps[coat]!.minutes
  const fetchedAt = firstOpenAt(floor.open, gridUp(floor, nowAt + fetchedMin), true)
  for (const window of windows) {
    const pinned = steps.map(
      (step, i): Step => (i === coat ? { ...step, startFrom: startTo - window, startTo } : step),
    )
    const release = startTo - window - 1440
    const problem = problemOf(ground, { job: { id: 'new', release, asked: release, steps: pinned } })
    const offer = promiseOf(problem, 'soonest')
    if (!offer.feasible || fetchedAt === null) continue
    const handover = Math.max(offer.handover, fetchedAt)
    const last = offer.stays.at(-1)!
    if (problem.fixed.some(stay => stay.bay === last.bay && stay.from < handover && stay.to > last.from))
      continue
    return { ...offer.plan, handover }
  }
  return null
}
