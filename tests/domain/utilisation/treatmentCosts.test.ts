import { expect, test } from 'vitest'
import { treatmentCosts } from '../../../main/domain/utilisation/index.ts'

test('a visit shares its blocked minutes by price; the dearest for what it earns comes first', () => {
  const costs = treatmentCosts(
    [
      { blockedMin: 60, treatments: [{ name: 'Wash', priceMinor: 5_000 }] },
      {
        blockedMin: 300,
        treatments: [
          { name: 'Wash', priceMinor: 5_000 },
          { name: 'Coat', priceMinor: 20_000 },
        ],
      },
    ],
    10_000,
  )
  expect(costs).toEqual(
    [
      { name: 'Wash', visits: 2, blockedMin: 120, revenueMinor: 10_000, blockedPerHundred: 120 },
      { name: 'Coat', visits: 1, blockedMin: 240, revenueMinor: 20_000, blockedPerHundred: 120 },
    ].sort((a, b) => b.blockedMin - a.blockedMin),
  )
})

test('what is given away earns nothing and comes first', () => {
  const free = { blockedMin: 30, treatments: [{ name: 'Gift', priceMinor: 0 }] }
  const paid = { blockedMin: 90, treatments: [{ name: 'Coat', priceMinor: 10_000 }] }
  expect(treatmentCosts([paid, free], 10_000)).toMatchObject([
    { name: 'Gift', blockedMin: 30, blockedPerHundred: null },
    { name: 'Coat', blockedPerHundred: 90 },
  ])
})
