import { expect, test } from 'vitest'
import { cellsOf, dayLater, lineOf, takeFirst, withOrder } from '../../../main/domain/shelf/expiryLine.ts'

test('a shelf stands in a line by its dates, with booked draws set aside from what they can still use', () => {
  const shelf = {
    stock: [
      { centi: 200, openDays: 1 },
      { centi: 300, openDays: 3 },
      // Past its date, and without one.
      { centi: 500, openDays: 0 },
      { centi: 100, openDays: null },
    ],
    underWayCenti: 100,
    waitingCenti: 0,
    booked: [],
    coverDays: 3,
    stepCenti: 100,
    ages: 4,
  }
  expect(lineOf(shelf)).toEqual([2, 0, 3, 2, 0])
  // What jobs wait for takes the oldest; a draw booked in two days cannot use what is good for one.
  expect(lineOf({ ...shelf, waitingCenti: 100 })).toEqual([1, 0, 3, 2, 0])
  expect(lineOf({ ...shelf, booked: [{ inDays: 2, centi: 400 }] })).toEqual([2, 0, 0, 1, 0])
  // Beyond the cover it is not set aside; beyond the shelf it is owed.
  expect(lineOf({ ...shelf, booked: [{ inDays: 4, centi: 400 }] })).toEqual([2, 0, 3, 2, 0])
  expect(lineOf({ ...shelf, booked: [{ inDays: 1, centi: 900 }] })).toEqual([0, 0, 0, 0, 2])
})

test('rounding to cells keeps the sum', () => {
  const stock = [1, 2, 3].map(openDays => ({ centi: 50, openDays }))
  const line = lineOf({
    stock,
    underWayCenti: 50,
    waitingCenti: 0,
    booked: [],
    coverDays: 1,
    stepCenti: 100,
    ages: 4,
  })
  expect(cellsOf(line)).toBe(2)
})

test('an order serves what is owed first, and a day takes the oldest, then throws away what is past its date', () => {
  expect(withOrder([0, 0, 0, 2], 3)).toEqual([0, 0, 1, 0])
  expect(withOrder([1, 0, 0, 0], 3)).toEqual([1, 0, 3, 0])
  expect(dayLater([2, 1, 3, 0], 1, 9)).toEqual({ line: [1, 3, 0, 0], expired: 1 })
  expect(dayLater([2, 1, 3, 0], 4, 9)).toEqual({ line: [0, 2, 0, 0], expired: 0 })
  // Seven wanted, six there, one owed; of more than is told apart, so much.
  expect(dayLater([2, 1, 3, 0], 7, 9)).toEqual({ line: [0, 0, 0, 1], expired: 0 })
  expect(dayLater([0, 0, 0, 2], 3, 4)).toEqual({ line: [0, 0, 0, 4], expired: 0 })
  const line = [2, 2, 0]
  takeFirst(line, 1, 1)
  expect(line).toEqual([2, 1, 0])
})
