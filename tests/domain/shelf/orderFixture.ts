/** One product with true demand, its plan and its advice at any stock: what the tests of ordering share. */
import {
  advise,
  type Demand,
  type Offer,
  type PlannedProduct,
  stockPosition,
} from '../../../main/domain/shelf/index.ts'
import { choosePolicy } from '../../../main/domain/shelf/policy.ts'
import { trueDemand } from '../../bench/simulation/smallRules.ts'
import { SMALL_SHOPS } from '../../bench/simulation/smallShops.ts'

const shop = SMALL_SHOPS.keeps
/** The small demand with cells of 10 ml instead of one. */
export const demand: Demand = (() => {
  const cells = trueDemand(shop, 6)
  const scale = 1000
  return {
    ...cells,
    stepCenti: scale,
    perDayCenti: cells.perDayCenti * scale,
    perDayVariance: cells.perDayVariance * scale ** 2,
    aheadMeanCenti: cells.aheadMeanCenti.map(mean => mean * scale),
  }
})()
export const cover = Float64Array.of(0, 0, 0.1, 0.6, 0.2, 0.1)
const arrival = Float64Array.of(0, 0.1, 0.6, 0.2, 0.1)
export const orderCost = { carriageMinor: 1000, freeFromMinor: null, lineMinor: 100 }
export const planned: PlannedProduct = {
  productId: 'p',
  demand,
  cover,
  packCenti: 3000,
  breaks: [{ fromPacks: 1, packPriceMinor: 2000 }],
  holdRatePerDay: 0.05,
  service: 0.95,
  lifeDays: null,
}
export const plan = choosePolicy({ ...planned, orderCost, joinChance: 0.2 })!
export const offer: Offer = {
  supplierId: 's',
  productId: 'p',
  sizeId: 'z',
  packCenti: 3000,
  containersPerPack: 1,
  breaks: planned.breaks,
  shelfLifeDays: null,
}
export const shelf = (centi: number, part: object = {}) =>
  stockPosition({
    stock: [{ centi, openDays: null }],
    underWayCenti: 0,
    waitingCenti: 0,
    booked: [],
    cover,
    demand,
    ...part,
  })
export const adviceAt = (centi: number, part: object = {}, more: object = {}) =>
  advise({
    productId: 'p',
    offer,
    plan,
    demand,
    position: shelf(centi, part),
    line: null,
    arrival,
    lifeDays: null,
    service: 0.95,
    jobShortCenti: 0,
    ...more,
  })
