/** Who is with which car first: nobody works on two cars at once because both are late. */
import type { Span } from '../calendar/index.ts'
import type { Booked } from './floor.ts'
import { type FloorJob, presenceOf } from './floorJobs.ts'

/** When somebody is needed by other jobs, by their id. */
export type Claimed = ReadonlyMap<string, readonly Span[]>

/** One step asking for its people. */
interface Ask {
  readonly job: FloorJob
  readonly index: number
  readonly fromAt: number
  /** It goes on now, so it does not wait. */
  readonly begun: boolean
  readonly people: readonly ({ readonly id: string } & Span)[]
}

interface Claim extends Span {
  readonly jobId: string
}

/** How often one car may be put behind others before what is left stands as a conflict to be seen. */
const mostTurns = 60

/**
 * Goes through the steps of the cars `carried` forward and of all that is booked in the order in which they begin, and
 * gives each its people. A step of a carried car whose people are with another by then is laid again (`again`) clear of
 * that; work under way never waits, and what is only booked keeps its time, so that its promise is told as lacking them.
 * `carried` is brought up to date in place.
 */
export function inTurn(
  floor: Booked,
  carried: Map<string, FloorJob>,
  again: (job: FloorJob, claimed: Claimed) => FloorJob,
): void {
  const ahead = floor.jobs
    .filter(job => !carried.has(job.id))
    .flatMap(job => asksOf(floor, job))
    .sort(soonerFirst)
  const waiting = new Map([...carried.values()].map(job => [job.id, asksOf(floor, job)]))
  const turns = new Map<string, number>()
  const claims = new Map<string, Claim[]>()
  let nextAhead = 0
  for (;;) {
    const own = firstOf(waiting)
    if (!own) return
    const other = ahead[nextAhead]
    if (other && soonerFirst(other, own) < 0) {
      nextAhead++
      claim(claims, other)
      continue
    }
    const { id } = own.job
    const turn = turns.get(id) ?? 0
    if (own.begun || turn >= mostTurns || !isTaken(claims, own)) {
      claim(claims, own)
      waiting.get(id)!.shift()
      continue
    }
    turns.set(id, turn + 1)
    const laid = again(own.job, othersOf(claims, own.job))
    carried.set(id, laid)
    // Held back for the work after it, a step that had its people may begin otherwise now, and asks anew.
    for (const list of claims.values()) removeOf(list, id)
    waiting.set(id, asksOf(floor, laid))
  }
}

/** The steps of a job that still need people, in order. */
function asksOf(floor: Booked, job: FloorJob): Ask[] {
  return job.steps.flatMap((step, index) =>
    step.kind === 'hold' || step.actualEndAt !== null || step.crewIds.length === 0
      ? []
      : {
          job,
          index,
          fromAt: step.startAt,
          begun: step.actualStartAt !== null,
          people: presenceOf(floor.open, step),
        },
  )
}

/** Who has begun comes first, then who begins sooner, then who was planned sooner, then the older booking. */
function soonerFirst(a: Ask, b: Ask): number {
  return (
    Number(b.begun) - Number(a.begun) ||
    a.fromAt - b.fromAt ||
    a.job.steps[a.index]!.plannedAt - b.job.steps[b.index]!.plannedAt ||
    a.job.number - b.job.number
  )
}

function firstOf(waiting: ReadonlyMap<string, readonly Ask[]>): Ask | undefined {
  let first: Ask | undefined
  for (const [ask] of waiting.values()) if (ask && (!first || soonerFirst(ask, first) < 0)) first = ask
  return first
}

function claim(claims: Map<string, Claim[]>, { job, people }: Ask): void {
  for (const { id, from, to } of people) {
    const list = claims.get(id)
    if (list) list.push({ jobId: job.id, from, to })
    else claims.set(id, [{ jobId: job.id, from, to }])
  }
}

function isTaken(claims: ReadonlyMap<string, readonly Claim[]>, { job, people }: Ask): boolean {
  return people.some(({ id, from, to }) =>
    claims.get(id)?.some(other => other.jobId !== job.id && other.from < to && from < other.to),
  )
}

function othersOf(claims: ReadonlyMap<string, readonly Claim[]>, job: FloorJob): Claimed {
  return new Map([...claims].map(([id, list]) => [id, list.filter(each => each.jobId !== job.id)] as const))
}

function removeOf(list: Claim[], jobId: string): void {
  for (let i = list.length - 1; i >= 0; i--) if (list[i]!.jobId === jobId) list.splice(i, 1)
}
