/**
 * Whether the shelf has what a job would draw on a day, without taking it from jobs already booked: what may still be
 * promised is the least of the bad case from that day until goods ordered today could be here. Later jobs can be ordered
 * for, so they do not stand in the way.
 */
import { dateOfDay } from '../calendar/index.ts'
import type { Projection } from './projection.ts'

export interface WantedDraw {
  readonly productId: string
  /** A booking waits for it where it lacks; what does not hold up is put on an order and never moves anything. */
  readonly holdsUp: boolean
  readonly centi: number
  /** Day number the job draws it on. */
  readonly day: number
  readonly projection: Projection
  /** Day number by which goods ordered today are here nine times in ten; null where nobody sells it. */
  readonly reorderDay: number | null
}

export interface DrawAvailability {
  readonly productId: string
  /** `there` on the shelf or on its way; `order` not yet, but there in time if ordered today; `short` not by that day. */
  readonly state: 'there' | 'order' | 'short'
  readonly missingCenti: number
  readonly holdsUp: boolean
  /** Day number of the first of its draws. */
  readonly day: number
  /** The first date from which the draw can be served; null: not within the days looked at, and nobody sells it. */
  readonly couldBeOn: string | null
}

export interface Availability {
  readonly draws: readonly DrawAvailability[]
  /** Nothing that holds up a booking is short. */
  readonly ok: boolean
  /** The first date everything that holds up can be served from; null where some of it never can. */
  readonly couldBeOn: string | null
}

/** Judges every draw of a job; several draws of one product count together. */
export function availabilityOf(wanted: readonly WantedDraw[]): Availability {
  const draws = gathered(wanted).map(judge)
  const dates = draws.filter(draw => draw.holdsUp).map(draw => draw.couldBeOn)
  const known = dates.filter(date => date !== null)
  return {
    draws,
    ok: draws.every(draw => draw.state !== 'short' || !draw.holdsUp),
    couldBeOn: known.length < dates.length ? null : (known.sort().at(-1) ?? null),
  }
}

function gathered(wanted: readonly WantedDraw[]): WantedDraw[] {
  const byProduct = new Map<string, WantedDraw>()
  for (const draw of wanted) {
    const same = byProduct.get(draw.productId)
    byProduct.set(
      draw.productId,
      same ? { ...same, centi: same.centi + draw.centi, day: Math.min(same.day, draw.day) } : draw,
    )
  }
  return [...byProduct.values()]
}

function judge(wanted: WantedDraw): DrawAvailability {
  const { productId, centi, day, holdsUp, reorderDay } = wanted
  const missingCenti = Math.max(0, Math.ceil(centi - promisable(wanted, day)))
  const found = { productId, missingCenti, holdsUp, day }
  if (missingCenti === 0) return { ...found, state: 'there', couldBeOn: dateOfDay(day) }
  // What arrives on a day serves from the next on.
  if (reorderDay !== null && reorderDay < day) return { ...found, state: 'order', couldBeOn: dateOfDay(day) }
  const from = firstDay(wanted)
  return { ...found, state: 'short', couldBeOn: from === null ? null : dateOfDay(from) }
}

/** The least the bad case leaves, from the evening before `day` on, until an order placed today takes over. */
function promisable({ projection, reorderDay }: WantedDraw, day: number): number {
  const { low, today } = projection
  const end = Math.min(
    low.length - 1,
    reorderDay === null ? low.length - 1 : Math.max(day, reorderDay) - today,
  )
  const from = Math.max(0, day - today - 1)
  if (from > low.length - 1) return Math.max(0, low.at(-1) ?? 0)
  return Math.max(0, Math.min(...low.subarray(from, end + 1)))
}

function firstDay(wanted: WantedDraw): number | null {
  const { projection, reorderDay, day, centi } = wanted
  const last = projection.today + projection.low.length - 1
  const ordered = reorderDay === null ? null : Math.max(day, reorderDay + 1)
  for (let at = day + 1; at <= Math.min(last, ordered ?? last); at++)
    if (promisable(wanted, at) >= centi) return at
  return ordered
}
