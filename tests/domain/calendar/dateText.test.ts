import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dateText, inShopYears, readDate, readShortDate } from '../../../main/domain/calendar/index.ts'
import type { DateOrder, Language } from '../../../main/domain/language/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

/** Does this in a shop that writes its dates so. */
function inShop(dateOrder: DateOrder, work: () => void, language: Language = 'en'): void {
  speaking(language, work, { country: 'GB', dateOrder })
}

describe('a date typed', () => {
  test.each([
    ['14/4/2026', '2026-04-14'],
    ['14.4.2026', '2026-04-14'],
    ['14. 4. 2026', '2026-04-14'],
    ['14-04-2026', '2026-04-14'],
    ['14 4 2026', '2026-04-14'],
    ['14042026', '2026-04-14'],
    [' 3/4/2026 ', '2026-04-03'],
    ['29/2/2028', '2028-02-29'],
  ])('day first: %s', (text, date) => {
    inShop('dayFirst', () => expect(readDate(text)).toBe(date))
  })

  test.each([
    ['4/14/2026', '2026-04-14'],
    ['04-14-2026', '2026-04-14'],
    ['4 14 2026', '2026-04-14'],
    ['04142026', '2026-04-14'],
    ['3/4/2026', '2026-03-04'],
    // Nobody writes the month before a point.
    ['14.4.2026', '2026-04-14'],
    ['3.4.2026', '2026-04-03'],
  ])('month first: %s', (text, date) => {
    inShop('monthFirst', () => expect(readDate(text)).toBe(date))
  })

  test.each(['dayFirst', 'monthFirst'] as const)('year first, in a shop with %s', order => {
    inShop(order, () => {
      for (const text of ['2026-04-03', '2026-4-3', '2026/4/3', '2026.04.03', '2026 4 3', '20260403'])
        expect(readDate(text), text).toBe('2026-04-03')
      // As 20 October or as the twentieth month it would be of the year 1231.
      expect(readDate('20101231')).toBe('2010-12-31')
    })
  })

  test.each([
    '',
    ' ',
    '2026',
    '4/2026',
    '31/4/2026',
    '29/2/2026',
    '2026-13-01',
    '2026-04-31',
    '0/4/2026',
    '14/4-2026',
    '1442026',
    '14/4/202',
    '14/4/20266',
    'tomorrow',
    '14 April 2026',
    '１４/４/２０２６',
    `14/4/2026${' '.repeat(50)}`,
  ])('no date: "%s"', text => {
    inShop('dayFirst', () => expect(readDate(text)).toBeNull())
  })

  test('a year of two digits once it is typed to its end, not before', () => {
    inShop('dayFirst', () => {
      for (const text of ['14/4/26', '14.4.26', '140426', '14 4 26']) {
        expect(readDate(text), text).toBeNull()
        expect(readShortDate(text), text).toBe('2026-04-14')
      }
      // POSIX, strptime: 69 is 1969, 68 is 2068.
      expect(readShortDate('1/2/69')).toBe('1969-02-01')
      expect(readShortDate('1/2/68')).toBe('2068-02-01')
      expect(readShortDate('14/4/2026')).toBe('2026-04-14')
      for (const text of ['31/4/26', '14/4/6', '14/4', '26', '14/4.26'])
        expect(readShortDate(text), text).toBeNull()
    })
    inShop('monthFirst', () => {
      expect(readShortDate('4/14/26')).toBe('2026-04-14')
      expect(readShortDate('041426')).toBe('2026-04-14')
      expect(readShortDate('14/4/26')).toBeNull()
    })
  })
})

describe('a date shown', () => {
  test.each([
    ['dayFirst', 'en', '14/4/2026'],
    ['monthFirst', 'en', '4/14/2026'],
    ['dayFirst', 'de', '14.4.2026'],
    ['monthFirst', 'de', '4/14/2026'],
  ] as const)('%s in %s is %s', (order, language, text) => {
    inShop(order, () => expect(dateText('2026-04-14')).toBe(text), language)
  })

  test('is read back as the same day, in every order and language', () => {
    const days = fc.integer({ min: 0, max: 55_000 })
    for (const order of ['dayFirst', 'monthFirst'] as const)
      for (const language of ['en', 'de'] as const)
        fc.assert(
          fc.property(days, day => {
            const date = Temporal.PlainDate.from('1950-01-01').add({ days: day }).toString()
            inShop(order, () => expect(readDate(dateText(date))).toBe(date), language)
          }),
        )
  })
})

test('the years of a shop are 1950 to 2100', () => {
  expect(['1949-12-31', '1950-01-01', '2100-12-31', '2101-01-01'].map(inShopYears)).toEqual([
    false,
    true,
    true,
    false,
  ])
})
