import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  movedTo,
  placeAfterMove,
  placeAt,
} from '../../../../../app/screens/settings/treatments/chainOrder.ts'

test('what is let go stands before the first step whose middle lies right of it', () => {
  const middles = [50, 150, 250]
  expect([0, 60, 149, 151, 900].map(x => placeAt(middles, x))).toEqual([0, 1, 1, 2, 3])
})

test('a step put before another stands there, whichever side it came from', () => {
  const list = ['a', 'b', 'c', 'd']
  expect(movedTo(list, 0, placeAfterMove(0, 3))).toEqual(['b', 'c', 'a', 'd'])
  expect(movedTo(list, 3, placeAfterMove(3, 1))).toEqual(['a', 'd', 'b', 'c'])
  expect(movedTo(list, 0, placeAfterMove(0, 4))).toEqual(['b', 'c', 'd', 'a'])
})

test('a step let go at its own place, on either side of it, stays', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 5 }), fc.boolean(), (from, behind) => {
      const list = [0, 1, 2, 3, 4, 5]
      expect(movedTo(list, from, placeAfterMove(from, behind ? from + 1 : from))).toEqual(list)
    }),
  )
})
