import type { Chances } from './chances.ts'
import type { Demand } from './demand.ts'
import type { OrderCost } from './orderCosts.ts'
import type { PriceBreak } from './supplier.ts'

/** What the choice of order point, size and plan by dates rests on. */
export interface PolicyInput {
  readonly demand: Demand
  /** `cover[k]`: chance that what is ordered at the next chance serves draws only after the k-th open day from now. */
  readonly cover: Chances
  readonly packCenti: number
  readonly breaks: readonly PriceBreak[]
  readonly orderCost: OrderCost
  /** Chance a day that another product orders from the same supplier, so that this one may join. */
  readonly joinChance: number
  /** What holding goods costs a day, as a share of their price. */
  readonly holdRatePerDay: number
  /** Share of draws that find the whole amount on the shelf, 0..1. */
  readonly service: number
  /** Open days from delivery to expiry; null when the goods keep. */
  readonly lifeDays: number | null
}
