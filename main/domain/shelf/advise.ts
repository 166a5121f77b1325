import { meanOf } from './chances.ts'
import type { Demand } from './demand.ts'
import { type ExpiryCap, expiryCap } from './expiryCap.ts'
import type { Line } from './expiryLine.ts'
import { lineKey } from './expiryProgram.ts'
import { chanceWithin, type Policy } from './policy.ts'
import { type Position, packsToOrder } from './position.ts'
import type { Offer } from './supplier.ts'

export interface AdviceInput {
  readonly productId: string
  readonly offer: Pick<Offer, 'packCenti' | 'breaks'>
  readonly plan: Policy | null
  readonly demand: Demand
  readonly position: Position
  /** The same by dates, as `lineOf` makes it with the ages of `plan.lines`; null where the plan has none. */
  readonly line: Line | null
  /** `arrival[k]`: chance that goods ordered today are here only after the k-th open day. */
  readonly arrival: Float64Array
  readonly lifeDays: number | null
  /** Target share of draws served. */
  readonly service: number
  /**
   * What a booked job is expected to lack before an order placed later could serve it, as the projection has it; 0: no
   * job. The order point alone allows for a little of this (it aims at a share of draws), a job on the board does not.
   */
  readonly jobShortCenti: number
}

/** `below-point` it is time; `joins` an order that goes out anyway; `bookings` no past use, but booked draws lack it. */
export type OrderReason = 'below-point' | 'joins' | 'bookings'

export interface Advice {
  readonly productId: string
  readonly position: Position
  readonly orderPointCenti: number
  readonly joinPointCenti: number
  /** The order point less the expected unforeseen use until the next delivery. */
  readonly safetyStockCenti: number
  readonly expectedUnforeseenCenti: number
  /** Chance that what is unforeseen until the next delivery stays within today's position. */
  readonly lastsChance: number
  readonly targetService: number
  /** Packs to order by itself today; 0: not yet. */
  readonly packs: number
  readonly reason: 'below-point' | 'bookings' | null
  /** Packs to add if the supplier gets an order today anyway; 0: not worth it yet. */
  readonly joinPacks: number
  /** Chosen by the dates of what is there, not by the order point alone. */
  readonly byDates: boolean
  /** The most packs that will be used before they expire; null where the goods keep. */
  readonly mostPacks: number | null
  /** Set where the expiry date holds the size down. */
  readonly cap: ExpiryCap | null
  /** Booked jobs need more than will be used before it expires: some of the order is expected to be wasted. */
  readonly beyondExpiry: boolean
  readonly perDayCenti: number
  /** Expected days until the order point is reached; null for a product without use on record. */
  readonly daysToPoint: number | null
}

/** Advises on one product. Every number of the answer has a sentence in `adviceReasons`. */
export function advise(input: AdviceInput): Advice {
  const { plan, position, demand, offer } = input
  const { packCenti } = offer
  const point = plan?.best.orderPointCenti ?? 0
  const extra = plan === null ? 0 : plan.best.packs - 1
  const byDates = answerByDates(input)
  const byPlan = byDates?.packs ?? packsToOrder(position.positionCenti, point, extra, packCenti)
  // Booked draws must be covered even where a rest of the pack will expire: a job is worth more than the rest.
  const forBookings = Math.ceil(Math.max(0, -position.positionCenti, input.jobShortCenti) / packCenti)
  const wanted = Math.max(byPlan, jobSize(input.jobShortCenti, extra, packCenti), forBookings)
  const joining =
    byDates?.joinPacks ??
    joinSize(position.positionCenti, point, extra, packCenti, plan?.best.joinPointCenti ?? 0)
  // What was chosen by dates has weighed what expires already.
  const cap = byDates ? null : capOf(input)
  const limited = (packs: number) => (cap === null ? packs : Math.min(packs, cap.packs))
  const packs = wanted === 0 ? 0 : Math.max(limited(wanted), forBookings)
  return {
    productId: input.productId,
    position,
    orderPointCenti: point,
    joinPointCenti: plan?.best.joinPointCenti ?? 0,
    safetyStockCenti: point - (plan?.expectedUnforeseenCenti ?? 0),
    expectedUnforeseenCenti: plan?.expectedUnforeseenCenti ?? 0,
    lastsChance: lastsChance(plan, position.positionCenti),
    targetService: input.service,
    packs,
    reason: packs === 0 ? null : plan === null || byPlan === 0 ? 'bookings' : 'below-point',
    joinPacks: wanted > 0 ? 0 : limited(joining),
    byDates: byDates !== null && packs === byPlan,
    mostPacks: cap?.packs ?? null,
    cap: cap !== null && cap.packs < Math.max(wanted, joining) ? cap : null,
    beyondExpiry: packs > 0 && cap !== null && packs > cap.packs,
    perDayCenti: demand.perDayCenti,
    daysToPoint:
      demand.perDayCenti > 0 ? Math.max(0, position.positionCenti - point) / demand.perDayCenti : null,
  }
}

/** What the plan by lines orders today; null where there is none, or it does not know this line. */
function answerByDates({ plan, line }: AdviceInput): { packs: number; joinPacks: number } | null {
  if (!plan?.lines || line === null) return null
  const key = lineKey(line)
  const packs = plan.lines.packs[key]
  return packs === undefined ? null : { packs, joinPacks: plan.lines.joinPacks[key] ?? 0 }
}

/** Packs for a job that would lack something although the order point is not reached: an order of the usual size. */
function jobSize(shortCenti: number, extra: number, packCenti: number): number {
  return shortCenti > 0 ? extra + Math.ceil(shortCenti / packCenti) : 0
}

/** Packs that join at a position between the order point and the join point: up to the level an own order reaches. */
function joinSize(
  position: number,
  point: number,
  extra: number,
  packCenti: number,
  joinPoint: number,
): number {
  if (position < point || position >= joinPoint) return 0
  return Math.max(0, extra + Math.ceil((point - position) / packCenti))
}

function capOf(input: AdviceInput): ExpiryCap | null {
  const { position, offer } = input
  return expiryCap({
    demand: input.demand,
    inLineCenti:
      position.onHandCenti + position.underWayCenti - position.waitingCenti - position.expiringCenti,
    leadDays: meanOf(input.arrival),
    lifeDays: input.lifeDays,
    packCenti: offer.packCenti,
  })
}

function lastsChance(plan: Policy | null, positionCenti: number): number {
  if (positionCenti < 0) return 0
  return plan === null ? 1 : chanceWithin(plan, positionCenti)
}
