/** Small shops with a known optimum: one whose goods keep, in packs of three cells, and one whose goods expire. */
import type { SmallShop } from './smallShelf.ts'

export const SMALL_SHOPS = {
  keeps: {
    walkIn: [0.75, 0.1, 0.1, 0.05],
    booked: [0.7, 0, 0.2, 0.1],
    notice: 2,
    late: 0.25,
    life: 0,
    packCells: 3,
    orderCost: 1000,
    holdCostPerDay: 33,
    price: 2000,
    most: 26,
    mostWaiting: 6,
  },
  expires: {
    walkIn: [0.8, 0.15, 0.05],
    booked: [0.7, 0.3],
    notice: 2,
    late: 0.25,
    life: 8,
    packCells: 1,
    orderCost: 600,
    holdCostPerDay: 60,
    price: 1000,
    most: 7,
    mostWaiting: 4,
  },
} as const satisfies Record<string, SmallShop>
