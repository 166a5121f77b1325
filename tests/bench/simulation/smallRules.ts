/** The project's rule and the min-max rule in the small shop, where both can be held against the optimum. */

import { addIndependent, NOTHING, varianceOf } from '../../../main/domain/shelf/chances.ts'
import {
  advise,
  type Chances,
  type Demand,
  lineOf,
  meanOf,
  type Policy,
  stockPosition,
} from '../../../main/domain/shelf/index.ts'
import { byLines } from '../../../main/domain/shelf/plan.ts'
import { choosePolicy } from '../../../main/domain/shelf/policy.ts'
import type { PolicyInput } from '../../../main/domain/shelf/policyInput.ts'
import { positionOf, type SmallShop, type SmallState } from './smallShelf.ts'

const CAP = 200

/** The demand as it truly is: the comparison is about the rule, not about what a history can teach. */
export function trueDemand(shop: SmallShop, horizon: number): Demand {
  const walkIn = Float64Array.from(shop.walkIn)
  const booked = Float64Array.from(shop.booked)
  const day = addIndependent(walkIn, booked, CAP)
  const walkInDraws = 1 - walkIn[0]!
  const bookedDraws = 1 - booked[0]!
  const ahead: Chances[] = [NOTHING]
  const aheadMeanCenti = [0]
  const drawSize: Chances[] = [NOTHING]
  const unforeseenShare = [0]
  const surprises: Chances[] = [NOTHING]
  for (let k = 1; k <= horizon; k++) {
    const open = k > shop.notice
    const surprise = open ? day : walkIn
    surprises.push(surprise)
    ahead.push(addIndependent(ahead[k - 1]!, surprise, CAP))
    aheadMeanCenti.push(aheadMeanCenti[k - 1]! + meanOf(surprise))
    const draws = walkInDraws + (open ? bookedDraws : 0)
    const size = new Float64Array(Math.max(walkIn.length, booked.length))
    for (let c = 1; c < size.length; c++) size[c] = ((walkIn[c] ?? 0) + (open ? (booked[c] ?? 0) : 0)) / draws
    drawSize.push(size)
    unforeseenShare.push(draws / (walkInDraws + bookedDraws))
  }
  return {
    stepCenti: 1,
    cap: CAP,
    draws: Number.MAX_SAFE_INTEGER,
    perDayCenti: meanOf(day),
    perDayVariance: varianceOf(day),
    day,
    ahead,
    aheadMeanCenti,
    surprise: surprises,
    drawSize,
    unforeseenShare,
  }
}

export interface SmallRule {
  readonly policy: Policy
  readonly rule: (state: SmallState) => number
}

/** The project's rule at a service target. Amounts are cells throughout. */
export function ownRule(shop: SmallShop, service: number): SmallRule {
  // An order of tomorrow's close serves from the third day on, the fourth if it is late.
  const cover = Float64Array.of(0, 0, 1 - shop.late, shop.late)
  const arrival = Float64Array.of(0, 1 - shop.late, shop.late)
  const demand = trueDemand(shop, cover.length)
  const orderCost = { carriageMinor: shop.orderCost, freeFromMinor: null, lineMinor: 0 }
  const offer = { packCenti: shop.packCells, breaks: [{ fromPacks: 1, packPriceMinor: shop.price }] }
  const lifeDays = shop.life === 0 ? null : shop.life
  const holdRatePerDay = (shop.holdCostPerDay * shop.packCells) / shop.price
  const terms: PolicyInput = {
    ...offer,
    demand,
    cover,
    orderCost,
    joinChance: 0,
    holdRatePerDay,
    service,
    lifeDays,
  }
  const policy = byLines(terms, choosePolicy(terms)!)
  const rule = (state: SmallState) => {
    const shelf = {
      stock: state.stock.map((centi, i) => ({ centi, openDays: shop.life === 0 ? null : i + 1 })),
      underWayCenti: state.lateOrder,
      waitingCenti: state.waiting,
      booked: state.bookings.map((centi, i) => ({ inDays: i + 1, centi })),
    }
    const position = stockPosition({ ...shelf, cover, demand })
    const ages = policy.lines?.ages
    const advice = {
      productId: '',
      offer,
      plan: policy,
      demand,
      position,
      line: ages ? lineOf({ ...shelf, coverDays: position.coverDays, stepCenti: 1, ages }) : null,
      arrival,
      lifeDays,
      orderCost,
      service,
      jobShortCenti: 0,
    }
    return advise(advice).packs
  }
  return { policy, rule }
}

/** Min-max: at or below `min` order whole packs up to `max`, knowing nothing of bookings. */
export function minMaxSmall(shop: SmallShop, min: number, max: number): (state: SmallState) => number {
  return state => {
    const position = positionOf(state)
    return position > min ? 0 : Math.ceil((max - position) / shop.packCells)
  }
}
