import { expect, test } from 'vitest'
import { lowestPrice, packPriceMinor } from '../../../main/domain/shelf/orderCosts.ts'

const breaks = [
  { fromPacks: 1, packPriceMinor: 1000 },
  { fromPacks: 10, packPriceMinor: 900 },
]

test('A pack costs what its order has reached', () => {
  expect([1, 9, 10, 40].map(packs => packPriceMinor(breaks, packs))).toEqual([1000, 1000, 900, 900])
  expect(lowestPrice({ packCenti: 50_000, breaks })).toBe(900 / 50_000)
})
