export { adviceReasons, type Reason, type ReasonCode } from './adviceReasons.ts'
export { type Advice, advise } from './advise.ts'
export { centiOf, type Unit, unitsOf } from './amount.ts'
export {
  amountText,
  amountUnit,
  amountWords,
  comparedBy,
  keptAmount,
  shownAmount,
  weightWords,
} from './amountWords.ts'
export { availabilityOf, type DrawAvailability, type WantedDraw } from './availability.ts'
export { addTo, type Chances, meanOf } from './chances.ts'
export {
  type CostedBefore,
  type CostMethod,
  type CostState,
  costMoves,
  leftOf,
} from './costing.ts'
export { countMove } from './count.ts'
export { arrivalChances, coverChances } from './cover.ts'
export { deliveryWindow } from './deliveries.ts'
export { type Demand, type History, learnDemand } from './demand.ts'
export { checkDilution, concentrateFor, countBack, shareWords } from './dilution.ts'
export { DISCARD_REASONS, type DiscardReason, discardWords, shorterLife, WENT_OFF } from './discard.ts'
export { planDraw } from './draw.ts'
export { lineOf } from './expiryLine.ts'
export { byLastDay, takeFirstExpired } from './firstExpired.ts'
export { isGtin, readGtin } from './gtin.ts'
export { latticeStep } from './lattice.ts'
export { appended, type Move, type MoveDraft, type MoveKind } from './ledger.ts'
export { estimateLevel, type Level } from './level.ts'
export { type Holding, holdingOf, lastDateOf, lastDayOf, openLot, usableOn } from './lot.ts'
export { mixesLots } from './mixing.ts'
export { packPriceMinor } from './orderCosts.ts'
export { type Advised, type OrderLine, type ProposedOrder, proposeOrders } from './orders.ts'
export { type PlannedProduct, type Plans, planSupplier } from './plan.ts'
export type { Policy } from './policy.ts'
export { stockPosition } from './position.ts'
export { checkProduct, labelError } from './product.ts'
export { type BookedDraw, type Delivery, type Projection, projectStock } from './projection.ts'
export { handsOf, realUse, realUseText, type UseReading } from './realUse.ts'
export { type ReceiptPlan, receiveGoods } from './receipt.ts'
export type { RecipeAmount } from './recipe.ts'
export { checkGrades, type Grade, type SetAct, setAfter, setDue } from './reusable.ts'
export { readScan } from './scan.ts'
export { expectedUnforeseen } from './serviceAtPoint.ts'
export {
  checkOffer,
  checkSupplier,
  type LeadTime,
  type Offer,
  type PriceBreak,
  type Supplier,
} from './supplier.ts'
export { compareSizes } from './unitPrice.ts'
export { useAhead } from './useAhead.ts'
export { wantsLook } from './wantsLook.ts'
export { contentByWeight } from './weigh.ts'
export { afterWorkingDays, leadTimeOf, orderDay, workingDayOf, workingDaysBetween } from './workingDays.ts'
