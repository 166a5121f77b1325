import type { Booked, Named } from '../../domain/floor/index.ts'
import type { ShopView } from '../desk/shopView.ts'

/** The shop's floor over a stretch of time, as everything that plans reads it, with the names it is told by. */
export interface Floor extends Booked, Named {
  readonly shop: ShopView
  readonly fromAt: number
}
