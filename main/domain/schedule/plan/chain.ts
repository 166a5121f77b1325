import { firstWhere } from '../../calendar/search.ts'
import { nextDoor, openBefore } from '../openTime.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared, prepare } from '../prepare.ts'
import { startsOf } from '../starts.ts'
import type { Step } from '../types.ts'
import { Link, type Rising } from './engine/links.ts'
import type { Solver } from './engine/solver.ts'
import { atLeast, atMost } from './engine/trail.ts'
import { anyOf, type Literal, not } from './literals.ts'
import { asProblem, type FloorJob, type FloorProblem } from './types.ts'

/** A step's starts, as grid points; its variable is the index of one of them. */
export interface StepVariable {
  readonly step: Step
  readonly x: number
  readonly starts: Rising
  /** The minute each start ends at. */
  readonly ends: Rising
}

/** One car's chain: its steps, and where each last start goes home. */
export interface Chain {
  readonly job: FloorJob
  readonly prepared: Prepared
  readonly steps: readonly StepVariable[]
  readonly first: StepVariable
  readonly last: StepVariable
  /** The first open door for each start of the last step, as a grid point. */
  readonly homes: Rising
}

/** The chain of a job in the solver: starts that hours and people allow, and waits. */
export function addChain(solver: Solver, floor: FloorProblem, job: FloorJob): Chain {
  const prepared = prepare(asProblem(floor, job))
  const { doors } = prepared
  const lastPoint = gridFloor(floor, floor.horizon)
  const homeOf = (end: number) => {
    const point = gridCeil(prepared, end)
    const door = doors[firstWhere(doors, span => span.to >= point)]
    return door ? Math.max(point, door.from) : lastPoint + 1
  }
  const steps: StepVariable[] = []
  for (const [i, step] of job.steps.entries()) {
    const points: number[] = []
    const ends: number[] = []
    for (const { from, to, length } of startsOf(prepared, step, job.release, floor.horizon))
      for (let k = from; k <= to; k++) {
        const end = minuteAt(floor, k) + length
        if (i === 0 && nextDoor(prepared.hours, minuteAt(floor, k)) !== minuteAt(floor, k)) continue
        if (i === job.steps.length - 1 && homeOf(end) > lastPoint) continue
        points.push(k)
        ends.push(end)
      }
    // A step that can start nowhere: the model is never satisfied, and any point stands in for its start.
    if (points.length === 0) {
      solver.clause([])
      points.push(gridCeil(floor, job.release))
      ends.push(job.release)
    }
    steps.push({
      step,
      x: solver.variable(0, points.length - 1),
      starts: Int32Array.from(points),
      ends: Int32Array.from(ends),
    })
  }
  steps.forEach((after, i) => {
    const before = steps[i - 1]
    if (before) addWaits(solver, floor, before, after)
  })
  const first = steps[0]!
  const last = steps.at(-1)!
  return { job, prepared, steps, first, last, homes: last.ends.map(homeOf) }
}

function addWaits(solver: Solver, floor: FloorProblem, before: StepVariable, after: StepVariable): void {
  const { waitMin, waitMax } = after.step
  const soonest = before.ends.map(end => gridCeil(floor, end + (waitMin ?? 0)))
  addLink(solver, new Link(before.x, soonest, after.x, after.starts))
  if (waitMax == null) return
  const latest = before.ends.map(end => gridFloor(floor, end + waitMax))
  addLink(solver, new Link(after.x, after.starts, before.x, latest))
}

/** Adds a link and wakes it when one of its bounds moves. */
export function addLink(solver: Solver, link: Link): void {
  const sides = [atLeast(link.x), atMost(link.y)]
  if (link.when) sides.push(link.when[0])
  solver.watch(link, sides)
}

/** Opening minutes before each of the points. */
export function openAt({ prepared }: Chain, points: Rising): Int32Array {
  return points.map(point => openBefore(prepared.hours, minuteAt(prepared.problem, point)))
}

/** "If `when`, then the step starts at one of the allowed indices." */
export function forbidStarts(
  solver: Solver,
  { x, starts }: StepVariable,
  when: Literal,
  allowed: (start: number) => boolean,
): void {
  for (let i = 0; i < starts.length; i++) {
    const from = i
    while (i < starts.length && !allowed(i)) i++
    if (i > from) anyOf(solver, [not(when), [2 * x + 1, 1 - from], [2 * x, i]])
  }
}
