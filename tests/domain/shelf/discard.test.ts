import fc from 'fast-check'
import { expect, test } from 'vitest'
import { discardWords, shorterLife } from '../../../main/domain/shelf/discard.ts'

const bottle = fc.record({ days: fc.integer({ min: 0, max: 90 }), ended: fc.boolean() })
const bottles = fc.array(bottle, { maxLength: 30 })
const life = fc.option(fc.integer({ min: 1, max: 100 }), { nil: null })

test('Of ten bottles three went off from the 40th day on: one in ten is borne, so 44 days are suggested', () => {
  const seen = [
    ...[40, 45, 50].map(days => ({ days, ended: true })),
    ...[60, 60, 60, 60, 60, 60, 60].map(days => ({ days, ended: false })),
  ]
  expect(shorterLife(seen, 60)).toEqual({ days: 44, wentOff: 3, bottles: 10 })
  expect(shorterLife(seen, null)).toEqual({ days: 44, wentOff: 3, bottles: 10 })
  expect(shorterLife(seen, 44)).toBeNull()
  expect(shorterLife(seen.slice(1), 60)).toBeNull()
})

test('A life is only ever shortened, to a day at the least, and once taken nothing more is suggested', () => {
  fc.assert(
    fc.property(bottles, life, (seen, days) => {
      const found = shorterLife(seen, days)
      if (!found) return
      expect(found.days).toBeGreaterThanOrEqual(1)
      expect(found.days).toBeLessThan(days ?? Number.POSITIVE_INFINITY)
      expect(shorterLife(seen, found.days)).toBeNull()
    }),
  )
})

test('One that was found good instead never shortens it further', () => {
  fc.assert(
    fc.property(bottles, life, fc.nat(), (seen, days, at) => {
      const better = seen.map((each, i) => (i === at % seen.length ? { ...each, ended: false } : each))
      const never = Number.POSITIVE_INFINITY
      expect(shorterLife(better, days)?.days ?? never).toBeGreaterThanOrEqual(
        shorterLife(seen, days)?.days ?? never,
      )
    }),
  )
})

test('The ledger says the reason and the word added to it', () => {
  expect(discardWords('skinned', ' ')).toBe('skinned over')
  expect(discardWords('cloudy', 'left in the sun')).toBe('cloudy: left in the sun')
  expect(discardWords('other', '')).toBe('')
})
