/** A shelf of any size for timing: products with lots, moves, bookings, deliveries and a learned use. */
import { dateOfDay } from '../../../main/domain/calendar/index.ts'
import type { BookedDraw, Delivery, MoveDraft } from '../../../main/domain/shelf/index.ts'
import type { Lot } from '../../../main/domain/shelf/lot.ts'
import type { UseAhead } from '../../../main/domain/shelf/useAhead.ts'
import { seeded } from './random.ts'

export interface CrowdedShelf {
  readonly today: number
  readonly lots: readonly (readonly Lot[])[]
  readonly moves: readonly Pick<MoveDraft, 'lotId' | 'centi'>[]
  readonly booked: readonly (readonly BookedDraw[])[]
  readonly deliveries: readonly (readonly Delivery[])[]
  readonly unforeseen: readonly UseAhead[]
}

export const DAYS_AHEAD = 60

export function crowdedShelf(products: number, lots: number, moves: number): CrowdedShelf {
  const random = seeded(products + lots + moves)
  const today = 20_500
  const between = (least: number, most: number) => least + Math.floor(random() * (most - least + 1))
  const perProduct = lots / products
  const shelf = Array.from({ length: products }, (_, p) =>
    Array.from({ length: perProduct }, (_, l): Lot => {
      const opened = random() < 0.2
      return {
        id: `lot-${p}-${l}`,
        productId: `product-${p}`,
        sizeId: null,
        batch: null,
        receivedOn: dateOfDay(today - between(1, 300)),
        expiresOn: random() < 0.8 ? dateOfDay(today + between(-20, 400)) : null,
        openedOn: opened ? dateOfDay(today - between(0, 60)) : null,
        lifeAfterOpeningDays: opened ? 90 : null,
      }
    }),
  )
  const perLot = moves / lots
  const ledger: Pick<MoveDraft, 'lotId' | 'centi'>[] = []
  for (const { id } of shelf.flat()) {
    ledger.push({ lotId: id, centi: perLot * 200 })
    for (let m = 1; m < perLot; m++) ledger.push({ lotId: id, centi: -between(1, 200) })
  }
  return {
    today,
    lots: shelf,
    moves: ledger,
    booked: shelf.map((_, p) =>
      Array.from({ length: 30 }, (_, b) => ({
        jobId: `job-${b}`,
        stepId: `step-${p}-${b}`,
        day: today + 1 + b,
        at: (today + 1 + b) * 1440 + 600,
        centi: between(500, 6000),
        sdCenti: 300,
      })),
    ),
    deliveries: shelf.map((_, p) => {
      const likelyDay = today + between(2, 12)
      const lastDay = today + 400
      return [
        {
          orderId: `order-${p}`,
          earlyDay: likelyDay - 1,
          likelyDay,
          lateDay: likelyDay + 4,
          centi: 30_000,
          lastDay,
        },
      ]
    }),
    unforeseen: shelf.map(() => {
      const mean = between(50, 2000)
      const steps = Array.from({ length: DAYS_AHEAD + 1 }, (_, k) => k)
      return { meanCenti: steps.map(k => k * mean), variance: steps.map(k => k * mean * 3000) }
    }),
  }
}
