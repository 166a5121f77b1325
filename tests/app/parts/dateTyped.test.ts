import { describe, expect, test } from 'vitest'
import { movedDate, readTyped } from '../../../app/parts/dateTyped.ts'
import type { DateOrder, Language } from '../../../main/domain/language/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

const inShop = (dateOrder: DateOrder, work: () => void, language: Language = 'en') =>
  speaking(language, work, { country: 'US', dateOrder })

describe('what a date field holds', () => {
  test('a day in the order of the shop, or year first', () => {
    inShop('dayFirst', () => expect(readTyped('3/4/2026', true, false)).toEqual({ date: '2026-04-03' }))
    inShop('monthFirst', () => expect(readTyped('3/4/2026', true, false)).toEqual({ date: '2026-03-04' }))
    for (const order of ['dayFirst', 'monthFirst'] as const)
      inShop(order, () => expect(readTyped('2026-03-04', true, false)).toEqual({ date: '2026-03-04' }))
  })

  test('a year of two digits only once the field is left: it may be the first half of another', () => {
    inShop('dayFirst', () => {
      expect(readTyped('3/4/20', true, false)).toHaveProperty('remedy')
      expect(readTyped('3/4/20', true, true)).toEqual({ date: '2020-04-03' })
    })
  })

  test('nothing, where a day may be missing', () => {
    expect(readTyped(' ', false, true)).toEqual({ date: null })
    expect(readTyped('', true, true)).toHaveProperty('remedy')
  })

  test('or words that say how a date is written in this shop', () => {
    const said = (order: DateOrder, needed: boolean, language: Language = 'en') => {
      let answer: unknown
      inShop(
        order,
        () => {
          answer = readTyped('31/4/2026', needed, true)
        },
        language,
      )
      return answer
    }
    expect(said('dayFirst', true)).toEqual({ remedy: 'Write a date such as 31/12/2026.' })
    expect(said('monthFirst', false)).toEqual({
      remedy: 'Write a date such as 12/31/2026, or leave it empty.',
    })
    expect(said('dayFirst', true, 'de')).toEqual({ remedy: 'Ein Datum eingeben, etwa 31.12.2026.' })
  })

  test('a day of other centuries is refused as the server refuses it', () => {
    inShop('dayFirst', () =>
      expect(readTyped('14/4/2206', true, true)).toEqual({
        remedy: '14/4/2206 is out of range: give a year from 1950 to 2100.',
      }),
    )
  })
})

test('the arrows move a day, over months and years, from today where there is none, and not out of range', () => {
  expect(movedDate('2026-12-31', 1, null)).toBe('2027-01-01')
  expect(movedDate('2028-03-01', -1, null)).toBe('2028-02-29')
  expect(movedDate(null, 1, '2026-04-15')).toBe('2026-04-15')
  expect(movedDate(null, 1, null)).toBeNull()
  expect(movedDate('2100-12-31', 1, null)).toBeNull()
  expect(movedDate('1950-01-01', -1, null)).toBeNull()
})
