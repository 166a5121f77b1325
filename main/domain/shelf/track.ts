/** One course the stock of a product may take: day by day, first expired first, with what expires on the way. */
import { byLastDay } from './firstExpired.ts'
import type { Holding } from './lot.ts'

export interface Arrival {
  /** Day number; what arrives serves from the day after. */
  readonly day: number
  readonly centi: number
  readonly lastDay: number | null
}

export interface Course {
  /** At each day's end. Below zero: what jobs wait for. */
  readonly stockCenti: Float64Array
  /** After each day's use, before anything arrives: below zero on the day a job goes short. */
  readonly afterUseCenti: Float64Array
  /** What passed its last day unused, each day. */
  readonly expiredCenti: Float64Array
}

interface Layer {
  centi: number
  readonly lastDay: number
}

/**
 * Follows the stock from `today` (index 0 is its end, before which nothing more happens) over the days ahead.
 * `useCenti[i]` is drawn on day `today + i`. A lot is thrown away at the end of its last day.
 */
export function followStock(
  holdings: readonly Holding[],
  arrivals: readonly Arrival[],
  today: number,
  useCenti: Float64Array,
): Course {
  const days = useCenti.length - 1
  const layers: Layer[] = []
  for (const holding of [...holdings].sort(byLastDay)) {
    const lastDay = holding.lastDay ?? Number.POSITIVE_INFINITY
    if (holding.centi > 0 && lastDay > today) layers.push({ centi: holding.centi, lastDay })
  }
  const due = [...arrivals].sort((a, b) => a.day - b.day)
  const stockCenti = new Float64Array(days + 1)
  const afterUseCenti = new Float64Array(days + 1)
  const expiredCenti = new Float64Array(days + 1)
  let stock = layers.reduce((sum, layer) => sum + layer.centi, 0)
  let head = 0
  let next = 0
  stockCenti[0] = stock
  afterUseCenti[0] = stock
  for (let i = 1; i <= days; i++) {
    const use = useCenti[i] ?? 0
    stock -= use
    afterUseCenti[i] = stock
    head = consume(layers, head, use)
    for (let layer = layers[head]; layer && layer.lastDay <= today + i; layer = layers[++head]) {
      expiredCenti[i] = (expiredCenti[i] ?? 0) + layer.centi
      stock -= layer.centi
    }
    for (let arrival = due[next]; arrival && arrival.day <= today + i; arrival = due[++next]) {
      const { centi, lastDay } = arrival
      // Jobs that wait take from it first.
      const left = stock < 0 ? Math.max(0, centi + stock) : centi
      stock += centi
      if (left > 0) insert(layers, head, { centi: left, lastDay: lastDay ?? Number.POSITIVE_INFINITY })
    }
    stockCenti[i] = stock
  }
  return { stockCenti, afterUseCenti, expiredCenti }
}

/** Takes from the front; returns where the rest begins. */
function consume(layers: Layer[], from: number, centi: number): number {
  let head = from
  let open = centi
  for (let layer = layers[head]; open > 0 && layer; layer = layers[++head]) {
    if (layer.centi > open) {
      layer.centi -= open
      return head
    }
    open -= layer.centi
  }
  return head
}

function insert(layers: Layer[], head: number, layer: Layer): void {
  const before = layers.findLastIndex(each => each.lastDay <= layer.lastDay)
  layers.splice(Math.max(head, before + 1), 0, layer)
}
