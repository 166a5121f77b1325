import { expect, test } from 'vitest'
import {
  date,
  language,
  minute,
  number,
  orderInput,
  wallSpan,
  whole,
} from '../../../main/services/desk/inputs.ts'

const refused = (
  schema: { safeParse(value: unknown): { error?: { issues: { message: string }[] } } },
  value: unknown,
) => schema.safeParse(value).error?.issues.map(issue => issue.message) ?? null

test('a date is one of the calendar, from 1950 to 2100, and each fault says what is wrong', () => {
  for (const good of ['1950-01-01', '2028-02-29', '2100-12-31']) expect(refused(date, good)).toBeNull()
  expect(refused(date, '15.4.2026')).toEqual(['"15.4.2026" is no date: give it as 2026-04-15.'])
  expect(refused(date, '2026-02-29')).toEqual(['2026-02-29 is not in the calendar.'])
  for (const far of ['1949-12-31', '2101-01-01'])
    expect(refused(date, far)).toEqual([`${far} is out of range: give a year from 1950 to 2100.`])
})

test('a minute lies in the same years', () => {
  const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds / 60_000
  expect(refused(minute, at('1950-01-01T00:00Z'))).toBeNull()
  expect(refused(minute, at('1950-01-01T00:00Z') - 1)).toEqual(['That is before 1950.'])
  expect(refused(minute, at('2101-01-01T00:00Z'))).toBeNull()
  expect(refused(minute, at('2101-01-01T00:00Z') + 1)).toEqual(['That is after 2100.'])
  expect(refused(minute, 1.5)).not.toBeNull()
})

test('numbers keep within their bound on either side, whole ones without a fraction', () => {
  expect(refused(number('Give a number.', 10), 9.5)).toBeNull()
  for (const off of [10.1, -10.1])
    expect(refused(number('Give a number.', 10), off)).toEqual(['Give a number from -10 to 10.'])
  expect(refused(number('Give a number.'), 'ten')).toEqual(['Give a number.'])
  expect(refused(whole('Give a whole number.'), 1.5)).toEqual(['Give a whole number.'])
  expect(refused(whole('Give a whole number.'), 1_000_000)).toBeNull()
})

test.each(['en', 'de', 'pt-BR', 'zh-Hans', 'zh-Hans-CN', 'es-419'])('%s is a language', tag => {
  expect(refused(language, tag)).toBeNull()
})

test.each(['', 'EN', 'english', 'de_DE', 'de-de', '../de'])('"%s" is none', tag => {
  expect(refused(language, tag)).not.toBeNull()
})

test('a day ends at 24:00, and a list has no more than 500 places', () => {
  expect(refused(wallSpan, { from: 0, to: 1440 })).toBeNull()
  expect(refused(wallSpan, { from: 0, to: 1441 })).not.toBeNull()
  const ids = Array.from({ length: 501 }, (_, i) => `row-${i}`)
  expect(refused(orderInput, { ids: ids.slice(1) })).toBeNull()
  expect(refused(orderInput, { ids })).not.toBeNull()
})
