import type { Gap } from './layers.ts'
import { firstEndingFrom, openBefore } from './openTime.ts'
import { type Piece, valueAt } from './pieces.ts'
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
  const last = reached.complete ? reached.layers.at(-1) : undefined
  let best: Finish | undefined
  for (const gap of last?.gaps ?? [])
    for (const piece of gap.pieces)
      for (const finish of finishesOf(reached, gap, piece)) if (!best || better(finish, best)) best = finish
  return best
}

/** The finishes of a piece that can be best. */
function finishesOf({ prepared, query }: Reached, gap: Gap, piece: Piece): Finish[] {
  const { doors } = prepared
  const found: Finish[] = []
  const shift = Math.ceil(piece.length / prepared.grid)
  const last = gridFloor(prepared, Math.min(gap.span.to, query.hi))
  const goes = (ready: number, home: number) => {
    const k = ready - shift
    if (home <= last) found.push({ gap, k, value: valueAt(piece, k), handover: minuteAt(prepared, home) })
  }
  // Ready times, in grid points: each waits for the first door at or after it.
  let ready = piece.from + shift
  const until = piece.to + shift
  let d = firstEndingFrom(doors, ready)
  for (let door = doors[d]; door && ready <= until; door = doors[++d]) {
    if (ready < door.from) {
      const run = Math.min(until, door.from)
      goes(piece.slope > 0 ? run : ready, door.from)
      ready = run + (run === door.from ? 0 : 1)
    }
    if (ready > until) break
    // Inside the opening the first of the run wins: the handover moves along with the start.
    goes(ready, ready)
    ready = door.to + 1
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
  return openAround(reached, finish) - handsOn
}

/** The opening minutes from drop-off to handover. */
function openAround({ prepared, score }: Reached, { handover, value }: Finish): number {
  return openBefore(prepared.hours, handover) - score.openBeforeDropOff(value)
}

/** The fewest blocked opening minutes, then the earliest handover, then the best value. */
export function leastBlockedFirst(reached: Reached): Better {
  // What somebody works is the same in each: only the rest is compared.
  const around = (finish: Finish) => openAround(reached, finish)
  return (a, b) => {
    const difference = around(a) - around(b)
    return difference !== 0 ? difference < 0 : soonestFirst(a, b)
  }
}
