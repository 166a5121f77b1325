import { expect, test } from 'vitest'
import { ordersFitting, readDay } from '../../../main/domain/imports/days.ts'

test.each([
  ['2026-04-15', 'dmy', '2026-04-15'],
  ['2026/4/5', 'mdy', '2026-04-05'],
  ['15.04.2026', 'dmy', '2026-04-15'],
  ['15. 4. 2026', 'dmy', '2026-04-15'],
  ['04/15/2026', 'mdy', '2026-04-15'],
  ['26-04-15', 'ymd', '2026-04-15'],
  [' 15.04.2026 13:05', 'dmy', '2026-04-15'],
  ['2026-04-15T13:05:00Z', 'ymd', '2026-04-15'],
  ['29.02.2028', 'dmy', '2028-02-29'],
] as const)('%s in the order %s is %s', (text, order, day) => {
  expect(readDay(text, order)).toBe(day)
})

test('a year of two digits turns the century at 50', () => {
  expect(readDay('01.01.49', 'dmy')).toBe('2049-01-01')
  expect(readDay('01.01.50', 'dmy')).toBe('1950-01-01')
})

test.each([
  ['15.04.2026', 'mdy'],
  ['29.02.2026', 'dmy'],
  ['00.04.2026', 'dmy'],
  ['1.2.3', 'dmy'],
  ['1.2.123', 'dmy'],
  ['2026-04', 'ymd'],
  ['next week', 'ymd'],
  ['', 'ymd'],
  ['2026-04-15x', 'ymd'],
  ['100.04.26', 'ymd'],
  ['15.2026.04', 'dmy'],
] as const)('%s in the order %s is no day', (text, order) => {
  expect(readDay(text, order)).toBeNull()
})

test('one text may settle the order of a whole list; where none does, all that fit are named', () => {
  expect(ordersFitting(['03.04.2026', '15.04.2026'])).toEqual(['dmy'])
  expect(ordersFitting(['03/04/2026', '04/15/2026'])).toEqual(['mdy'])
  expect(ordersFitting(['03/04/2026', 'nothing'])).toEqual(['dmy', 'mdy'])
  expect(ordersFitting(['2026-04-03', '2026-04-15'])).toEqual(['ymd'])
})
