/**
 * The stock position an order is decided on: what is on the shelf and can be used in time, what is under way, less the
 * jobs that wait, less what is booked until the next delivery could be here, less what will expire by then unused.
 */
import { type Chances, chanceOf, leastCover, NOTHING } from './chances.ts'
import type { Demand } from './demand.ts'

/** Stock that can be used on the next `openDays` open days and not after; null: it keeps. */
export interface DatedStock {
  readonly centi: number
  readonly openDays: number | null
}

/** A booked draw, `inDays` open days from now (1: the next). */
export interface BookedUse {
  readonly inDays: number
  readonly centi: number
}

export interface Position {
  readonly onHandCenti: number
  readonly underWayCenti: number
  readonly waitingCenti: number
  readonly bookedCenti: number
  readonly expiringCenti: number
  readonly positionCenti: number
  /** Open days until the next delivery could serve, unless it is among the latest fifth. */
  readonly coverDays: number
}

export interface PositionInput {
  readonly stock: readonly DatedStock[]
  readonly underWayCenti: number
  readonly waitingCenti: number
  readonly booked: readonly BookedUse[]
  readonly cover: Chances
  readonly demand: Demand
}

// Booked draws are set aside for a wait that four in five deliveries keep to. Setting more aside would count twice
// against the few late ones, which the unforeseen use carries already.
const ON_TIME_SHARE = 0.8
// What expires unused is judged by the three in ten cases of most use: in the others it is more, but there the shelf is
// full enough. The small shop of the bench reaches the service it predicts with this share.
const MUCH_USE = 0.7

/** Nets the shelf down to what is left for unforeseen use until the next delivery. */
export function stockPosition(input: PositionInput): Position {
  const coverDays = coverDaysOf(input.cover)
  const onHandCenti = input.stock.reduce((sum, lot) => sum + lot.centi, 0)
  const bookedCenti = bookedWithin(input.booked, coverDays)
  const expiringCenti = expectedExpiry(input, coverDays)
  return {
    onHandCenti,
    underWayCenti: input.underWayCenti,
    waitingCenti: input.waitingCenti,
    bookedCenti,
    expiringCenti,
    positionCenti: onHandCenti + input.underWayCenti - input.waitingCenti - bookedCenti - expiringCenti,
    coverDays,
  }
}

/** Open days that cover all but the latest fifth of the waits for the next delivery. */
export function coverDaysOf(cover: Chances): number {
  return leastCover(cover, ON_TIME_SHARE)
}

function bookedWithin(booked: readonly BookedUse[], days: number): number {
  return booked.reduce((sum, use) => (use.inDays <= days ? sum + use.centi : sum), 0)
}

/**
 * What is expected to pass its date within `days` when much is used: for each date the stock usable no longer than it,
 * less booked and unforeseen use until then; the largest of these, because what expires early is not there to expire
 * later.
 */
function expectedExpiry(input: PositionInput, days: number): number {
  const dated = input.stock
    .flatMap(({ centi, openDays }) => (openDays !== null && openDays <= days ? [{ centi, openDays }] : []))
    .sort((a, b) => a.openDays - b.openDays)
  let upToDate = 0
  let expiring = 0
  for (const lot of dated) {
    upToDate += lot.centi
    const k = Math.max(0, Math.min(lot.openDays, input.demand.ahead.length - 1))
    const left = upToDate - bookedWithin(input.booked, k)
    expiring = Math.max(
      expiring,
      excessInMuchUse(left, input.demand.ahead[k] ?? NOTHING, input.demand.stepCenti),
    )
  }
  return expiring
}

/** Expected part of `centi` that the use leaves, over the cases of much use. */
function excessInMuchUse(centi: number, use: Chances, stepCenti: number): number {
  let sum = 0
  let upTo = 0
  for (let k = 0; k < use.length && k * stepCenti < centi; k++) {
    const before = Math.max(upTo, MUCH_USE)
    upTo += chanceOf(use, k)
    sum += Math.max(0, upTo - before) * (centi - k * stepCenti)
  }
  return sum / (1 - MUCH_USE)
}

/**
 * Packs to order at a position: none while it is at or above the point; below it, those that bring it back to the point
 * and `extraPacks` more.
 */
export function packsToOrder(
  positionCenti: number,
  pointCenti: number,
  extraPacks: number,
  packCenti: number,
): number {
  if (positionCenti >= pointCenti) return 0
  return extraPacks + Math.ceil((pointCenti - positionCenti) / packCenti)
}
