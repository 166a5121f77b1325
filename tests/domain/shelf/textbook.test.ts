import { expect, test } from 'vitest'
import { economicQuantity, safetyStock } from '../../../main/domain/shelf/textbook.ts'

test('Harris by hand: 1,000 a year, 10 an order, 0.50 to hold one for a year', () => {
  expect(economicQuantity(1000, 10, 0.5)).toEqual({ quantity: 200, ordersPerYear: 5, yearlyCost: 100 })
})

test('Ten a day, five days, two days either way, 97.5 percent', () => {
  // The normal table says 1.96 standard deviations of 20.
  const { safetyStock: safety, orderPoint } = safetyStock({
    demandPerDay: 10,
    demandSd: 0,
    leadDays: 5,
    leadSd: 2,
    serviceLevel: 0.975,
  })
  expect(safety).toBeCloseTo(39.2, 1)
  expect(orderPoint).toBeCloseTo(89.2, 1)
})

test('No demand and nothing to hold for are refused', () => {
  expect(() => economicQuantity(0, 10, 1)).toThrow(expect.objectContaining({ field: 'demandPerYear' }))
  expect(() => economicQuantity(10, 10, 0)).toThrow(expect.objectContaining({ field: 'holdingPerUnitYear' }))
})
