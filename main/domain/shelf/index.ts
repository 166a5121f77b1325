export { adviceReasons, type Reason, type ReasonCode, type ReasonInput } from './adviceReasons.ts'
export { type Advice, type AdviceInput, advise, type OrderReason } from './advise.ts'
export { amountWords, CENTI_PER_UNIT, centiOf, type Unit, unitsOf } from './amount.ts'
export { type Availability, availabilityOf, type DrawAvailability, type WantedDraw } from './availability.ts'
export { addIndependent, type Chances, leastCover, meanOf, NOTHING, varianceOf } from './chances.ts'
export { type CostMethod, type Costs, costMoves, type JobCost, jobCosts } from './costing.ts'
export { type Counted, countMove } from './count.ts'
export { arrivalChances, type CoverInput, coverChances } from './cover.ts'
export {
  type DeliveryWindow,
  deliveryWindow,
  type LateOrder,
  lateOrders,
  type OpenLine,
  type OpenOrder,
  type OrderProgress,
  progressOf,
  received,
  stillComing,
} from './deliveries.ts'
export { type Demand, type DemandOptions, type History, learnDemand, type PastDraw } from './demand.ts'
export { type DrawPlan, type DrawRequest, FOUND_MORE, planDraw } from './draw.ts'
export { type ExpiryCap, expiryCap } from './expiryCap.ts'
export { byLastDay, type Take, type Taken, takeFirstExpired } from './firstExpired.ts'
export { checkDigitOf, isGtin, readGtin } from './gtin.ts'
export {
  type Croston,
  croston,
  type DemandPattern,
  type PatternOfUse,
  patternOf,
  teunterSyntetosBabai,
} from './intermittent.ts'
export { latticeStep } from './lattice.ts'
export {
  appended,
  type Balances,
  balanceAfter,
  balancesOf,
  checkMove,
  inLedgerOrder,
  MOVE_KINDS,
  type Move,
  type MoveDraft,
  type MoveKind,
} from './ledger.ts'
export { estimateLevel, type Level, type LevelMethod } from './level.ts'
export { type Holding, holdingOf, type Lot, lastDateOf, lastDayOf, openLot, usableOn } from './lot.ts'
export { normalLoss, normalQuantile, normalShare } from './normal.ts'
export { type Advised, type OrderLine, type ProposedOrder, proposeOrders, repriced } from './orders.ts'
export { cheapestWay, type PlannedProduct, type Plans, planSupplier } from './plan.ts'
export {
  type Choice,
  choosePolicy,
  expectedUnforeseen,
  type OrderCost,
  type Policy,
  type PolicyInput,
  packPriceMinor,
} from './policy.ts'
export {
  type BookedUse,
  type DatedStock,
  type Position,
  type PositionInput,
  stockPosition,
} from './position.ts'
export { type OrderRule, type Standing, standing } from './positions.ts'
export {
  type ContainerSize,
  checkProduct,
  contentCenti,
  labelError,
  PRODUCT_KINDS,
  type ProductKind,
  type ShelfProduct,
  storageWarning,
} from './product.ts'
export {
  type BookedDraw,
  type Delivery,
  type DryMoment,
  type Projection,
  type ProjectionInput,
  projectStock,
} from './projection.ts'
export { type Hand, handsOf, type RealUse, realUse, realUseText, type UseReading } from './realUse.ts'
export { type ReceiptPlan, type ReceivedLine, receiveGoods } from './receipt.ts'
export { type BookedStep, checkRecipe, drawsOf, type RecipeAmount, type RecipeLine } from './recipe.ts'
export { farOut, medianDeviation, robustSpread } from './robust.ts'
export { readScan, type Scan } from './scan.ts'
export {
  checkOffer,
  checkSupplier,
  type LeadTime,
  type Offer,
  type PriceBreak,
  type Supplier,
} from './supplier.ts'
export {
  economicQuantity,
  fillRate,
  quantityWithBreaks,
  roundUpToPack,
  type SafetyInput,
  safetyStock,
  singleSeasonQuantity,
  type UnitPriceBreak,
} from './textbook.ts'
export { type Arrival, type Course, followStock } from './track.ts'
export { compareSizes, type SizePrice, type UnitPrice } from './unitPrice.ts'
export { noUseAhead, type UseAhead, useAhead } from './useAhead.ts'
export { contentByWeight, drawnByWeight, type Weighed } from './weigh.ts'
export {
  afterWorkingDays,
  leadChances,
  leadTimeOf,
  nextWorkingDay,
  orderDay,
  type WorkingDay,
  workingDayOf,
  workingDaysBetween,
} from './workingDays.ts'
export { carriedValue, type WriteOff, writeOffs } from './writeOffs.ts'
