import { expect, test } from 'vitest'
import { inCoins } from '../../../main/domain/money/cash.ts'

test('Cash is asked in the coins there are, ties upward', () => {
  expect([9_998, 9_997, 9_992, 10_000].map(minor => inCoins(minor, 5))).toEqual([
    10_000, 9_995, 9_990, 10_000,
  ])
  expect(inCoins(9_998, 1)).toBe(9_998)
  expect(inCoins(150, 100)).toBe(200)
})
