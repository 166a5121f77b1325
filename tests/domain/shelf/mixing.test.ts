import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mixesLots } from '../../../main/domain/shelf/mixing.ts'

const lot = fc.record({
  id: fc.constantFrom('a', 'b', 'c', 'd'),
  batch: fc.constantFrom('K1', 'K2', null),
})

test('Bottles of one printed batch are no mix; another batch, or one nobody wrote down, is', () => {
  const a = { id: 'a', batch: 'K-10' }
  expect(mixesLots([], [a, { id: 'b', batch: ' k-10' }])).toBe(false)
  expect(mixesLots([], [a, { id: 'b', batch: 'K-11' }])).toBe(true)
  expect(mixesLots([a], [{ id: 'b', batch: null }])).toBe(true)
  expect(mixesLots([{ id: 'b', batch: null }], [{ id: 'b', batch: null }])).toBe(false)
})

test('The order they are drawn in does not matter, and what is on the car already is asked about once', () => {
  fc.assert(
    fc.property(fc.array(lot), fc.array(lot), (before, now) => {
      expect(mixesLots(before, now)).toBe(mixesLots([...before].reverse(), [...now].reverse()))
      expect(mixesLots([...before, ...now], now)).toBe(false)
      expect(mixesLots([...before, ...now], [])).toBe(false)
    }),
  )
})
