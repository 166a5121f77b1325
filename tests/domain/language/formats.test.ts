import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPast } from '../../../app/parts/pastText.ts'
import { pickedDate } from '../../../app/parts/time.ts'
import { readWall, wallText } from '../../../app/parts/wallText.ts'
import { weekdayChoices, weekWords } from '../../../app/parts/weekHours.ts'
import {
  atWall,
  dateOfDay,
  dateText,
  dayWords,
  hourWords,
  longDayWords,
  minuteWords,
  momentWords,
  readDate,
  wallWords,
  weekdayDate,
} from '../../../main/domain/calendar/index.ts'
import {
  clockHours,
  dateOrders,
  languages,
  usualFormats,
  weekdaysNow,
  writtenIn,
} from '../../../main/domain/language/index.ts'
import { mergeValues } from '../../../main/domain/upkeep/reminders/mergeValues.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

const american = <T>(said: () => T): T => speaking('en', said, { country: 'US' })
/** Without the space that does not break. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ')

/*
 * Unicode CLDR 47, common/supplemental/supplementalData.xml: timeData ("allowed" and "preferred" hour formats) and
 * weekData (firstDay) by territory; common/main/en.xml, en_001.xml, en_GB.xml, de.xml: dateFormatLength "long".
 */
it.each([
  ['en-US', 12, 'monthFirst', 7],
  ['en-CA', 12, 'monthFirst', 7],
  ['en-GB', 24, 'dayFirst', 1],
  ['en-IE', 24, 'dayFirst', 1],
  ['en-AU', 12, 'dayFirst', 1],
  ['en-NZ', 12, 'dayFirst', 1],
  ['en-IN', 12, 'dayFirst', 7],
  ['de-DE', 24, 'dayFirst', 1],
  ['de-AT', 24, 'dayFirst', 1],
  ['de-CH', 24, 'dayFirst', 1],
  ['de-US', 24, 'dayFirst', 7],
] as const)('%s writes %i hours, %s, weeks from day %i', (locale, hours, order, first) => {
  expect(usualFormats(locale)).toEqual({ clockHours: hours, dateOrder: order, weekBegins: first })
})

describe('a shop in the United States', () => {
  const zone = 'America/New_York'
  const at = atWall('2026-04-16', 17 * 60 + 58, zone)

  it('writes times and days as is usual there', () => {
    american(() => {
      expect(plain(wallWords(0))).toBe('12:00 am')
      expect(plain(wallWords(480))).toBe('8:00 am')
      expect(plain(wallWords(720))).toBe('12:00 pm')
      expect(plain(wallWords(1050))).toBe('5:30 pm')
      expect(wallWords(1440)).toBe('midnight')
      expect(plain(hourWords(13))).toBe('1 pm')
      expect(dayWords('2026-04-16')).toBe('April 16, 2026')
      expect(dayWords('2026-04-16', '2026-01-01')).toBe('April 16')
      expect(weekdayDate('2026-04-16')).toBe('Thu, April 16, 2026')
      expect(longDayWords('2026-04-16', '2026-04-01')).toBe('Thursday, April 16')
      expect(plain(minuteWords(at, zone, at - 8 * 1440))).toBe('Thu, April 16 5:58 pm')
      expect(plain(momentWords(at, zone))).toBe('Thu, April 16, 2026, 5:58 pm')
      expect(pickedDate()).toBe('ddd, MMMM D, YYYY')
    })
  })

  it('begins its weeks on Sunday, in lists and in words', () => {
    american(() => {
      expect(weekdaysNow()).toEqual([7, 1, 2, 3, 4, 5, 6])
      expect(weekdayChoices().map(({ label }) => label)).toEqual([
        'Sun',
        'Mon',
        'Tue',
        'Wed',
        'Thu',
        'Fri',
        'Sat',
      ])
      const weekly = [1, 2, 3, 4, 5, 7].map(weekday => ({ weekday, from: 480, to: 1020 }))
      expect(plain(weekWords(weekly))).toBe('Sun to Fri 8:00 am to 5:00 pm')
    })
  })

  it('reads a day typed in figures with its month first', () => {
    american(() => {
      expect(readDate('4/14/2026')).toBe('2026-04-14')
      expect(readDate('14.4.2026')).toBe('2026-04-14')
      expect(readDate('14/4/2026')).toBeNull()
      expect(readPast('4/14/2026 5:30 pm', atWall('2026-04-16', 600, zone), zone)).toBe(
        atWall('2026-04-14', 1050, zone),
      )
    })
    expect(readDate('14/4/2026')).toBe('2026-04-14')
    expect(readDate('31/4/2026')).toBeNull()
  })
})

describe('what the shop chose', () => {
  it('goes before what is usual in its country', () => {
    const own = { country: 'US', clockHours: 24, dateOrder: 'dayFirst', weekBegins: 6 } as const
    speaking(
      'en',
      () => {
        expect(wallWords(1050)).toBe('17:30')
        expect(dayWords('2026-04-16')).toBe('16 April 2026')
        expect(weekdaysNow()[0]).toBe(6)
      },
      own,
    )
  })

  it('holds in German too, but for the order of words, which is the language’s', () => {
    speaking(
      'de',
      () => {
        expect(plain(wallWords(1050))).toBe('5:30 PM')
        expect(weekdayDate('2026-04-16')).toBe('Do, 16. April 2026')
        expect(readDate('4/16/2026')).toBe('2026-04-16')
      },
      { country: 'DE', clockHours: 12, dateOrder: 'monthFirst' },
    )
  })

  it('goes into letters of every language', () => {
    const slotAts = [atWall('2026-05-04', 1050, 'UTC')]
    const facts = { ...blank, slotAts }
    const slot = (language: string, ways: Parameters<typeof speaking>[2]) =>
      speaking('en', () => plain(mergeValues(facts, language, 'UTC').slotOne ?? ''), ways)
    expect(slot('en', { country: 'US' })).toBe('Monday, May 4 at 5:30 PM')
    expect(slot('en', { country: 'US', clockHours: 24, dateOrder: 'dayFirst' })).toBe('Monday 4 May at 17:30')
    expect(slot('fr', { country: 'FR' })).toBe('lundi 4 mai à 17:30')
    expect(writtenIn('fr')).toEqual({ locale: 'fr' })
  })

  const blank = {
    ownerName: '',
    carName: '',
    plate: '',
    visitName: '',
    dueOn: '2026-05-04',
    lastOn: '2025-05-04',
    heldUntilAt: null,
    shopName: '',
    shopPhone: '',
    shopAddress: '',
    stopWay: '',
  }
})

it('reads back each time and day as it was written, in every way of writing', () => {
  const ways = fc.record({
    country: fc.constantFrom('US', 'GB', 'DE', 'AU'),
    clockHours: fc.constantFrom(...clockHours, null),
    dateOrder: fc.constantFrom(...dateOrders, null),
  })
  fc.assert(
    fc.property(
      fc.constantFrom(...languages),
      ways,
      fc.integer({ min: 0, max: 1440 }),
      // Days of 1990 to 2089.
      fc.integer({ min: 7_305, max: 43_800 }),
      (language, way, minute, day) => {
        const date = dateOfDay(day)
        speaking(
          language,
          () => {
            expect(readWall(wallText(minute))).toBe(minute)
            expect(readDate(dateText(date))).toBe(date)
          },
          way,
        )
      },
    ),
  )
})
