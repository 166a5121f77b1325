/** What has happened to the demo's bookings by now: arrivals, times, cures under way, one promise that slips. */

import { openMinutesBetween } from '../../domain/calendar/index.ts'
import { type FloorJob, type FloorStep, projectJob } from '../../domain/floor/index.ts'
import type { Floor } from '../floor/floor.ts'
import type { Placed } from './place.ts'

export interface Happened extends Placed {
  readonly leftAt: number | null
  readonly heldUntilAt: number | null
}

/** The bookings as they stand at `nowAt`. The same `nowAt` always gives the same. */
export function letHappen(floor: Floor, placed: readonly Placed[], nowAt: number): Happened[] {
  const happened = placed.map(each => ({ ...each, ...jobBy(each.job, nowAt), heldUntilAt: null }))
  const slipped = withSlip(floor, happened, nowAt)
  const held = withHold(slipped, nowAt)
  let jobs = held.map(each => each.job)
  return held.map(each => {
    if (each.job.status !== 'inShop') return each
    const { job } = projectJob({ ...floor, nowAt, jobs }, each.job)
    jobs = jobs.map(other => (other.id === job.id ? job : other))
    return { ...each, job }
  })
}

/** Work begins on time and ends a little early; a cure runs from the real end of its coat. */
function jobBy(job: FloorJob, nowAt: number): { job: FloorJob; leftAt: number | null } {
  const arrivedAt = job.steps[0]?.plannedAt ?? nowAt
  if (arrivedAt > nowAt) return { job, leftAt: null }
  let before = arrivedAt
  const steps = job.steps.map((step, i): FloorStep => {
    if (step.kind === 'hold') {
      before += step.minutes
      return { ...step, startAt: before - step.minutes, endAt: before }
    }
    const startAt = Math.max(before, step.plannedAt)
    if (startAt > nowAt) return step
    // What may not wait long for the next, as a wipe for its coat, ends on time: the demo shows no wait missed by minutes.
    const next = job.steps[i + 1]
    const early = next?.kind === 'work' && next.waitMax !== null ? 0 : (job.number * 2 + i) % 6
    const endAt = step.plannedEndAt - early
    before = endAt
    const actualEndAt = endAt <= nowAt ? endAt : null
    return { ...step, startAt, endAt: actualEndAt ?? step.endAt, actualStartAt: startAt, actualEndAt }
  })
  const leftAt = job.plannedHandoverAt + (job.number % 4)
  if (leftAt > nowAt) return { job: { ...job, steps, status: 'inShop', arrivedAt }, leftAt: null }
  return { job: { ...job, steps, status: 'handedOver', arrivedAt, leavesAt: leftAt }, leftAt }
}

/** How soon the car that slips goes home, and the one that is only held would come, in minutes. */
const soonMin = 4 * 1440

/**
 * One car that was dragged on the board to make room, and now comes home a little after its promise: of those here
 * or soon to come, the one whose promise can slip least. Cars that wait to be fetched are not late.
 */
function withSlip(floor: Floor, happened: readonly Happened[], nowAt: number): Happened[] {
  let slip: { index: number; promisedAt: number; lateMin: number } | null = null
  for (const [index, { job, fetched }] of happened.entries()) {
    const left = job.plannedHandoverAt - nowAt
    if (job.status === 'handedOver' || left <= 0 || left > soonMin || fetched) continue
    const promisedAt = lastOpenBefore(floor, job.plannedHandoverAt - 45)
    const lateMin = job.plannedHandoverAt - promisedAt
    if (!slip || lateMin < slip.lateMin) slip = { index, promisedAt, lateMin }
  }
  return happened.map((each, i) =>
    i === slip?.index ? { ...each, job: { ...each.job, promisedAt: slip.promisedAt } } : each,
  )
}

function lastOpenBefore(floor: Floor, at: number): number {
  let promisedAt = floor.gridFrom + Math.floor((at - floor.gridFrom) / floor.gridMin) * floor.gridMin
  while (openMinutesBetween(floor.open, promisedAt - 1, promisedAt) === 0) promisedAt -= floor.gridMin
  return promisedAt
}

/** One place of the coming days is only held: its caller is still thinking. */
function withHold(happened: readonly Happened[], nowAt: number): Happened[] {
  const last = happened.findLastIndex(
    ({ job }) =>
      job.status === 'booked' &&
      job.steps[0]!.plannedAt < nowAt + soonMin &&
      job.promisedAt === job.plannedHandoverAt,
  )
  return happened.map((each, i) =>
    i === last ? { ...each, job: { ...each.job, status: 'held' }, heldUntilAt: nowAt + 27 } : each,
  )
}
