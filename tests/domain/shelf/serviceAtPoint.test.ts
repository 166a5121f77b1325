import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Demand } from '../../../main/domain/shelf/demand.ts'
import { expectedUnforeseen, leftAt, serviceAt } from '../../../main/domain/shelf/serviceAtPoint.ts'

const chances = fc
  .array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 8 })
  .filter(list => list.some(weight => weight > 0))
  .map(list => Float64Array.from(list, weight => weight / list.reduce((a, b) => a + b, 0)))

test('what is left of so many cells is their mean over each use, never less than nothing', () => {
  fc.assert(
    fc.property(chances, fc.integer({ min: -2, max: 20 }), (unforeseen, cells) => {
      const left = unforeseen.reduce((sum, chance, used) => sum + chance * Math.max(0, cells - used), 0)
      expect(leftAt(unforeseen)(cells)).toBeCloseTo(left, 10)
    }),
  )
})

const demand = {
  cap: 100,
  ahead: [Float64Array.of(1), Float64Array.of(0.5, 0.5), Float64Array.of(0.25, 0.5, 0.25)],
  aheadMeanCenti: [0, 50, 100],
  drawSize: [Float64Array.of(1), Float64Array.of(0, 1), Float64Array.of(0, 0, 1)],
  unforeseenShare: [0, 0, 0.5],
} as object as Demand

test('booked draws find their amount where all use until that evening leaves it, an unforeseen one behind the day before', () => {
  const onDayTwo = serviceAt(demand, Float64Array.of(0, 0, 1))
  // Half of the draws are booked: served when the two days use no more. The other half want two cells after day one.
  expect(onDayTwo(0)).toBeCloseTo(0.5 * 0.25, 12)
  expect(onDayTwo(1)).toBeCloseTo(0.5 * 0.75, 12)
  expect(onDayTwo(2)).toBeCloseTo(0.5 + 0.5 * 0.5, 12)
  expect(onDayTwo(3)).toBeCloseTo(1, 12)
  expect([onDayTwo(-1), onDayTwo(50)]).toEqual([0, expect.closeTo(1, 12)])
})

test('over a delivery that may come on either day each counts by its chance', () => {
  const either = Float64Array.of(0, 0.5, 0.5)
  const one = serviceAt(demand, Float64Array.of(0, 1))
  const two = serviceAt(demand, Float64Array.of(0, 0, 1))
  for (const cells of [0, 1, 2, 3])
    expect(serviceAt(demand, either)(cells)).toBeCloseTo((one(cells) + two(cells)) / 2, 12)
  expect(expectedUnforeseen(demand, either)).toBe(75)
})
