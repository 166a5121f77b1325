/** The ways out of a promise that is not kept: other people, another bay, another time. */

import { gridUp } from '../../domain/calendar/index.ts'
import { judge, meetsBay, projectFloor } from '../../domain/floor/index.ts'
import { can, isMovableFrom } from '../../domain/job/index.ts'
import type { Plan } from '../../domain/schedule/index.ts'
import type { Skill } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'
import { planMove, restOfJob } from '../floor/movePlan.ts'
import { otherVisits } from '../floor/vehicleFree.ts'
import { type Swap, withPerson } from '../job/people.ts'
import { soonestPlace } from '../job/slip.ts'

/** One way out; `handoverAt` is when the car then goes home. */
export type WayOut =
  | { readonly way: 'person'; readonly swaps: readonly Swap[]; readonly handoverAt: number }
  | Placed<'bay'>
  | Placed<'time'>
  | { readonly way: 'push'; readonly position: number; readonly bayId: string; readonly handoverAt: number }

interface Placed<W extends string> {
  readonly way: W
  readonly index: number
  readonly plan: Plan
  readonly bayId: string
  readonly startAt: number
  readonly handoverAt: number
}

/** Every way out of a car's trouble that leaves its promise better than it is; the least change first. */
export async function waysOut(tx: Tx, floor: Floor, job: JobRow): Promise<WayOut[]> {
  if (!can(job, 'move')) return []
  const visits = await otherVisits(tx, floor, job)
  const now = judged(floor).of(job)
  const person = otherPeople(floor, job)
  const place = otherBay(floor, job, visits)
  const soonest = soonestPlace(floor, job, visits)
  const push = otherBayNow(floor, job)
  const time: WayOut[] =
    soonest && (now.lack !== null || soonest.handoverAt < now.expectedAt) && soonest.plan !== place?.plan
      ? [{ way: 'time', ...soonest }]
      : []
  return [...(person ? [person] : []), ...(push ? [push] : []), ...(place ? [place] : []), ...time]
}

/** Somebody else for each step that its person is missing from or late for; null where that does not help. */
function otherPeople(floor: Floor, job: JobRow): WayOut | null {
  const before = judged(floor).of(job)
  const lacking = new Set(
    judged(floor)
      .conflicts.filter(each => each.jobId === job.id && each.uncovered && each.crewId !== undefined)
      .map(each => `${each.position} ${each.crewId}`),
  )
  const wanted = job.steps.flatMap(step =>
    step.kind === 'work' && step.actualEndAt === null
      ? step.crewIds
          .filter(
            id =>
              lacking.has(`${step.position} ${id}`) ||
              (step.actualStartAt === null && step.startAt > step.plannedAt && before.lateMin > 0),
          )
          .map(id => ({ step, id }))
      : [],
  )
  let now = floor
  const swaps: Swap[] = []
  for (const { step, id: fromId } of wanted) {
    const found = candidates(floor, step)
      .map(toId => ({ position: step.position, fromId, toId }))
      .map(swap => ({ swap, after: withPerson(now, job.id, swap) }))
      .find(({ swap, after }) => suits(now, after, job, swap))
    if (!found) continue
    swaps.push(found.swap)
    now = found.after
  }
  const after = judge(now).of(job)
  const better = after.lateMin < before.lateMin || (before.lack !== null && after.lack === null)
  return swaps.length > 0 && better && after.lateMin <= before.lateMin
    ? { way: 'person', swaps, handoverAt: after.expectedAt }
    : null
}

/** Who has the skill and is not on the step. */
function candidates(floor: Floor, step: JobRow['steps'][number]): string[] {
  return floor.crew
    .filter(
      person =>
        !person.archived &&
        (person.noticeDays ?? 0) === 0 &&
        !step.crewIds.includes(person.id) &&
        (step.skill === null || person.skills.includes(step.skill as Skill)),
    )
    .map(person => person.id)
}

/** The person is there and free for it, it makes the car no later, and no other promise pays for it. */
function suits(before: Floor, after: Floor, job: JobRow, { position, toId }: Swap): boolean {
  const [was, is] = [judge(before), judge(after)]
  return (
    is.of(job).lateMin <= was.of(job).lateMin &&
    !is.conflicts.some(
      each => each.jobId === job.id && each.uncovered && each.position === position && each.crewId === toId,
    ) &&
    after.jobs.every(
      other =>
        other.id === job.id ||
        (is.of(other).lateMin <= was.of(other).lateMin &&
          (is.of(other).lack === null || was.of(other).lack !== null)),
    )
  )
}

type Visits = Awaited<ReturnType<typeof otherVisits>>

/** The same times in another bay, where a bay is what is missing. */
function otherBay(floor: Floor, job: JobRow, visits: Visits): (WayOut & { plan?: Plan }) | null {
  const [lack] = judged(floor).conflicts.filter(
    each => each.jobId === job.id && each.uncovered && each.bayId !== null,
  )
  const index = job.steps.findIndex(
    (step, i) => step.bayId === lack?.bayId && step.endAt > lack.fromAt && isMovableFrom(job.steps, i),
  )
  const step = job.steps[index]
  if (!lack || !step) return null
  const rest = restOfJob(floor, job, index, visits)
  const startAt = Math.max(step.startAt, gridUp(floor, floor.nowAt))
  for (const bay of floor.bays) {
    const plan = planMove(rest, { bayId: bay.id, startAt })
    if (plan.ok)
      return {
        way: 'bay',
        index,
        plan: plan.offer.plan,
        bayId: bay.id,
        startAt,
        handoverAt: plan.offer.handover,
      }
  }
  return null
}

/** The car rolled over in the middle of its work, where the bay it stands in is down. */
function otherBayNow(floor: Floor, job: JobRow): WayOut | null {
  const running = job.steps.find(step => step.actualStartAt !== null && step.actualEndAt === null)
  const stands = running?.movedToBayId ?? running?.bayId
  const down = judged(floor).conflicts.some(
    each =>
      each.jobId === job.id && each.kind === 'closed' && each.bayId === stands && each.fromAt <= floor.nowAt,
  )
  if (!running || !down) return null
  const bay = floor.bays.find(
    each => each.id !== stands && meetsBay(floor, each, running, { from: floor.nowAt, to: running.endAt }),
  )
  if (!bay) return null
  const moved = pushed(floor, job.id, { position: running.position, bayId: bay.id })
  return {
    way: 'push',
    position: running.position,
    bayId: bay.id,
    handoverAt: judge(moved).of(job).expectedAt,
  }
}

/** The floor with a car moved now to another bay in the middle of a step. */
function pushed(
  floor: Floor,
  jobId: string,
  { position, bayId }: { position: number; bayId: string },
): Floor {
  return projectFloor({
    ...floor,
    jobs: floor.jobs.map(job =>
      job.id === jobId
        ? {
            ...job,
            steps: job.steps.map(step =>
              step.position === position ? { ...step, movedToBayId: bayId, movedAt: floor.nowAt } : step,
            ),
          }
        : job,
    ),
  })
}
