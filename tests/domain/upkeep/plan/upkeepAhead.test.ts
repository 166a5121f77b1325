import { expect, test } from 'vitest'
import { upkeepAhead } from '../../../../main/domain/upkeep/index.ts'

test('Three years of a topper twice a year: worked by hand', () => {
  const start = { handoverOn: '2026-04-17', firstWashDays: 7, checkUpDays: 28, topperDays: 182 }
  // Three years hold six intervals of 182 days, which are 1,092, and three anniversaries.
  expect([...upkeepAhead(start, 'Europe/Berlin')].sort()).toEqual([
    ['check-up', 1],
    ['first-wash', 1],
    ['inspection', 3],
    ['topper', 6],
  ])
})
