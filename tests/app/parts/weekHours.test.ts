import { expect, test } from 'vitest'
import { copyDay, hoursOf, spansWords, usualWeek, weekWords } from '../../../app/parts/weekHours.ts'

const lunch = [
  { weekday: 1, from: 480, to: 720 },
  { weekday: 1, from: 780, to: 1080 },
  { weekday: 6, from: 540, to: 780 },
]

test('the openings of a day know their place in the week', () => {
  expect(hoursOf(lunch, 6)).toEqual([{ weekday: 6, from: 540, to: 780, index: 2 }])
  expect(hoursOf(lunch, 7)).toEqual([])
})

test('a day is copied over others, whatever they had, and the rest stays', () => {
  const copied = copyDay([...lunch, { weekday: 2, from: 0, to: 60 }], 1, [2, 3])
  expect(hoursOf(copied, 2).map(({ from, to }) => [from, to])).toEqual([
    [480, 720],
    [780, 1080],
  ])
  expect(hoursOf(copied, 3)).toHaveLength(2)
  expect(hoursOf(copied, 6)).toHaveLength(1)
  expect(copyDay(lunch, 7, [1]).filter(hours => hours.weekday === 1)).toEqual([])
})

test('a week in words puts days of equal hours together', () => {
  expect(weekWords(usualWeek)).toBe('Mon to Fri 08:00 to 18:00')
  expect(weekWords(lunch)).toBe('Mon 08:00 to 12:00, 13:00 to 18:00, Sat 09:00 to 13:00')
  expect(weekWords([])).toBe('never open')
  expect(spansWords([])).toBe('closed')
})
