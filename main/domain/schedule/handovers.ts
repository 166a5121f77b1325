import type { Gap, Layer } from './layers.ts'
import { firstAtLeast, openBefore } from './openTime.ts'
import { valueAt } from './pieces.ts'
import { gridFloor, minuteAt } from './prepare.ts'
import type { Reached } from './search.ts'

/** The end of one way through the chain: where and when its last step starts, and when the car goes home. */
export interface Finish {
  readonly gap: Gap
  /** The last step's start, a grid point. */
  readonly k: number
  readonly value: number
  readonly handover: number
}

/** Whether `a` is the better finish; equal ones may say either. */
export type Better = (a: Finish, b: Finish) => boolean

/**
 * The best finish among everything reached, or undefined. Each last start goes home at the first open door after its
 * end; between doors the handover stands still while the start runs, so only the ends of such runs can be best.
 */
export function bestFinish(reached: Reached, better: Better): Finish | undefined {
  const layer = reached.complete ? reached.layers.at(-1) : undefined
  let best: Finish | undefined
  if (!layer) return undefined
  for (const gap of layer.gaps)
    for (let p = gap.first; p < gap.last; p++)
      for (const finish of finishesOf(reached, layer, gap, p))
        if (!best || better(finish, best)) best = finish
  return best
}

/** The finishes of piece `p` that can be best. */
function finishesOf({ prepared, query }: Reached, { pieces }: Layer, gap: Gap, p: number): Finish[] {
  const { doorFrom, doorTo } = prepared
  const found: Finish[] = []
  const shift = Math.ceil(pieces.length[p]! / prepared.grid)
  const last = gridFloor(prepared, Math.min(prepared.bays[gap.bay]!.to[gap.span]!, query.hi))
  const goes = (ready: number, home: number) => {
    const k = ready - shift
    if (home <= last) found.push({ gap, k, value: valueAt(pieces, p, k), handover: minuteAt(prepared, home) })
  }
  // Ready times, in grid points: each waits for the first door at or after it.
  let ready = pieces.from[p]! + shift
  const until = pieces.to[p]! + shift
  for (let d = firstAtLeast(doorTo, ready); d < doorTo.length && ready <= until; d++) {
    const open = doorFrom[d]!
    if (ready < open) {
      const run = Math.min(until, open)
      goes(pieces.slope[p]! > 0 ? run : ready, open)
      ready = run + (run === open ? 0 : 1)
    }
    if (ready > until) break
    // Inside the opening the first of the run wins: the handover moves along with the start.
    goes(ready, ready)
    ready = doorTo[d]! + 1
  }
  return found
}

/** The earliest handover, then the best value (drop-off, moves, preferences). */
export const soonestFirst: Better = (a, b) =>
  a.handover !== b.handover ? a.handover < b.handover : a.value > b.value

/** The best value first: with values of earliest drop-offs, drop-off, then handover, then moves. */
export function earliestDropOffFirst(reached: Reached): Better {
  const { minute } = reached.score
  const dropOff = (finish: Finish) => Math.floor(finish.value / minute)
  return (a, b) => {
    const difference = dropOff(a) - dropOff(b)
    if (difference !== 0) return difference > 0
    return soonestFirst(a, b)
  }
}

/** The blocked opening minutes of a finish, read from its value ('latest' searches only). */
export function blockedOf(reached: Reached, finish: Finish): number {
  let handsOn = 0
  for (const step of reached.prepared.problem.newJob.steps) if (step.kind === 'work') handsOn += step.minutes
  const gone = openBefore(reached.prepared.hours, finish.handover)
  return gone - reached.score.openBeforeDropOff(finish.value) - handsOn
}

/** The fewest blocked opening minutes, then the earliest handover, then the best value. */
export function leastBlockedFirst(reached: Reached): Better {
  return (a, b) => {
    const difference = blockedOf(reached, a) - blockedOf(reached, b)
    return difference !== 0 ? difference < 0 : soonestFirst(a, b)
  }
}
