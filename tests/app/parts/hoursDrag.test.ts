import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayMinutes, endReach, movedEnd } from '../../../app/parts/hoursDrag.ts'

const lunch = [
  { from: 480, to: 720 },
  { from: 780, to: 1080 },
]

test('an end goes to the quarter of an hour next to where it is let go', () => {
  expect(movedEnd(lunch, 0, 'from', 452)).toEqual({ from: 450, to: 720 })
  expect(movedEnd(lunch, 1, 'to', 1118)).toEqual({ from: 780, to: 1125 })
})

test('an end stops at the opening beside it, at its other end and at midnight', () => {
  expect(endReach(lunch, 0, 'to')).toEqual({ least: 495, most: 780 })
  expect(movedEnd(lunch, 0, 'to', 900)).toEqual({ from: 480, to: 780 })
  expect(movedEnd(lunch, 1, 'from', 600)).toEqual({ from: 720, to: 1080 })
  expect(movedEnd(lunch, 0, 'from', 900)).toEqual({ from: 705, to: 720 })
  expect(movedEnd(lunch, 0, 'from', Number.NEGATIVE_INFINITY)).toEqual({ from: 0, to: 720 })
  expect(movedEnd(lunch, 1, 'to', Number.POSITIVE_INFINITY)).toEqual({ from: 780, to: dayMinutes })
})

test('openings that were typed over each other stay as they are until they are typed apart', () => {
  const over = [
    { from: 480, to: 1000 },
    { from: 490, to: 1080 },
  ]
  expect(movedEnd(over, 0, 'to', 700)).toEqual(over[0])
})

test('whatever is dragged, the openings of a day keep their order and never meet', () => {
  const minute = fc.integer({ min: -200, max: 1700 })
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(1), fc.boolean(), minute), { maxLength: 12 }), moves => {
      const day = [...lunch]
      for (const [index, opens, to] of moves) day[index] = movedEnd(day, index, opens ? 'from' : 'to', to)
      const ends = day.flatMap(({ from, to }) => [from, to])
      expect(ends).toEqual(ends.toSorted((a, b) => a - b))
      for (const { from, to } of day) expect(to - from).toBeGreaterThanOrEqual(15)
      expect(Math.max(...ends)).toBeLessThanOrEqual(dayMinutes)
    }),
  )
})
