/**
 * The simulated shop: three products of different pattern from two suppliers, five open days a week. Bookings come in
 * days ahead, some use is booked by nobody, the suppliers are late now and then, and goods expire.
 */
import type { PriceBreak } from '../../../main/domain/shelf/index.ts'
import type { OrderCost } from '../../../main/domain/shelf/orderCosts.ts'
import { normalDraw, pick, poissonDraw, type Random, seeded } from './random.ts'

export interface SimProduct {
  readonly name: string
  readonly supplier: number
  readonly packCenti: number
  readonly breaks: readonly PriceBreak[]
  /** Open days it can be used after delivery. */
  readonly lifeDays: number
  /** Booked draws a day, their notice in open days and amounts; real use strays from the recipe by `spread`. */
  readonly bookedPerDay: number
  readonly notice: readonly (readonly [number, number])[]
  readonly bookedCenti: readonly (readonly [number, number])[]
  readonly spread: number
  readonly walkInPerDay: number
  readonly walkInCenti: readonly (readonly [number, number])[]
  readonly service: number
}

export interface SimDraw {
  readonly knownOn: number | null
  readonly usedOn: number
  readonly centi: number
  readonly expectedCenti: number | null
}

/** Everything that happens whatever the shelf does: the same for every rule. */
export interface World {
  readonly products: readonly SimProduct[]
  readonly days: number
  /** Per product and day (index 0 is `historyDays` before the start): the draws of that day. */
  readonly draws: readonly (readonly (readonly SimDraw[])[])[]
  readonly historyDays: number
  /** Working days an order placed with a supplier on a day takes. */
  readonly leadOf: (supplier: number, day: number) => number
}

export interface SimSupplier {
  readonly orderCost: OrderCost
  /** Working days it takes, with weights: mostly on time, sometimes very late. */
  readonly lead: readonly (readonly [number, number])[]
}

export const SUPPLIERS: readonly SimSupplier[] = [
  {
    orderCost: { carriageMinor: 1500, freeFromMinor: 25_000, lineMinor: 150 },
    lead: [
      [4, 2],
      [5, 4],
      [6, 3],
      [7, 1],
      [10, 0.8],
      [15, 0.4],
    ],
  },
  {
    orderCost: { carriageMinor: 950, freeFromMinor: null, lineMinor: 150 },
    lead: [
      [7, 2],
      [8, 3],
      [9, 2],
      [12, 1],
      [18, 0.5],
    ],
  },
]

/** A year has 250 open days; money, room and risk cost 30 % of the price a year. */
export const HOLD_RATE_PER_DAY = 0.3 / 250

const NOTICE = [
  [1, 1],
  [2, 1],
  [4, 2],
  [6, 3],
  [8, 3],
  [10, 4],
  [13, 3],
  [16, 2],
  [20, 2],
] as const

/** A costly coating drawn by booked jobs; a wipe used every day; a topper asked for now and then, mostly unbooked. */
export const PRODUCTS: readonly SimProduct[] = [
  {
    name: 'coating, booked and lumpy',
    supplier: 0,
    packCenti: 5000,
    breaks: [
      { fromPacks: 1, packPriceMinor: 6400 },
      { fromPacks: 6, packPriceMinor: 6100 },
    ],
    lifeDays: 240,
    bookedPerDay: 0.4,
    notice: NOTICE,
    bookedCenti: [
      [2500, 2],
      [4000, 3],
      [6000, 1],
      [10_000, 1],
    ],
    spread: 0.1,
    walkInPerDay: 0.03,
    walkInCenti: [[1500, 1]],
    service: 0.97,
  },
  {
    name: 'panel wipe, steady',
    supplier: 0,
    packCenti: 50_000,
    breaks: [
      { fromPacks: 1, packPriceMinor: 900 },
      { fromPacks: 12, packPriceMinor: 820 },
    ],
    lifeDays: 360,
    bookedPerDay: 0.9,
    notice: NOTICE,
    bookedCenti: [
      [9000, 2],
      [15_000, 2],
      [24_000, 1],
    ],
    spread: 0.15,
    walkInPerDay: 0.5,
    walkInCenti: [
      [4000, 2],
      [9000, 1],
    ],
    service: 0.99,
  },
  {
    name: 'topper, now and then',
    supplier: 1,
    packCenti: 25_000,
    breaks: [{ fromPacks: 1, packPriceMinor: 3800 }],
    lifeDays: 180,
    bookedPerDay: 0.06,
    notice: NOTICE,
    bookedCenti: [
      [8000, 1],
      [14_000, 1],
    ],
    spread: 0.1,
    walkInPerDay: 0.05,
    walkInCenti: [
      [5000, 2],
      [15_000, 1],
    ],
    service: 0.95,
  },
]

export function makeWorld(
  products: readonly SimProduct[],
  weeks: number,
  historyDays: number,
  seed: number,
): World {
  const days = weeks * 5
  const total = historyDays + days
  const random = seeded(seed)
  const draws = products.map(() => Array.from({ length: total }, () => [] as SimDraw[]))
  products.forEach((product, p) => {
    for (let day = 0; day < total; day++) {
      for (let n = poissonDraw(random, product.bookedPerDay); n > 0; n--) {
        const draw = bookedDraw(random, product, day)
        if (draw.usedOn >= total) continue
        draws[p]![draw.usedOn]!.push(draw)
      }
      for (let n = poissonDraw(random, product.walkInPerDay); n > 0; n--)
        draws[p]![day]!.push({
          knownOn: null,
          usedOn: day,
          centi: Math.round(pick(random, product.walkInCenti) * (0.8 + 0.4 * random())),
          expectedCenti: null,
        })
    }
  })
  const leads = SUPPLIERS.map(supplier =>
    Int32Array.from({ length: total }, () => pick(random, supplier.lead)),
  )
  return { products, days, draws, historyDays, leadOf: (supplier, day) => leads[supplier]![day]! }
}

function bookedDraw(random: Random, product: SimProduct, day: number): SimDraw {
  const expectedCenti = pick(random, product.bookedCenti)
  const factor = Math.max(0.4, 1 + product.spread * normalDraw(random))
  return {
    knownOn: day,
    usedOn: day + pick(random, product.notice),
    centi: Math.round(expectedCenti * factor),
    expectedCenti,
  }
}
