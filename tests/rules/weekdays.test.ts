import fc from 'fast-check'
import { expect, it } from 'vitest'
import { nearWords, todayWords } from '../../app/parts/time.ts'
import { atWall, dateOf, dayNumber, minuteWords } from '../../main/domain/calendar/index.ts'
import { nearDayWords } from '../../main/services/shelf/lotViews.ts'
import { spokenFiles } from './saidWords.ts'
import { read } from './trackedFiles.ts'

const zone = 'America/New_York'

/** Who names the weekday of a date, and why none of them leaves out its date further than six days off. */
const namers: Record<string, string> = {
  'main/domain/calendar/dayWords.ts': 'makes the words',
  'main/domain/calendar/minuteWords.ts': 'asks weekdayWillDo',
  'app/parts/time.ts': 'asks weekdayWillDo, or puts the day of the month beside it',
  'main/services/shelf/lotViews.ts': 'asks weekdayWillDo',
}

it('only those name a weekday who know how far off it is', () => {
  const naming = spokenFiles().filter(path => /\bweekday(Name|Short)\(/.test(read(path)))
  expect(naming.sort()).toEqual(Object.keys(namers).sort())
})

it('a day further than six days away carries its date', () => {
  const days = fc.integer({ min: 7, max: 3_000 }).chain(far => fc.constantFrom(far, -far))
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 1_439 }), (away, minute) => {
      const nowAt = atWall('2026-04-15', 600, zone)
      const date = Temporal.PlainDate.from('2026-04-15').add({ days: away }).toString()
      const at = atWall(date, minute, zone)
      const day = new RegExp(`\\b${Number(dateOf(at, zone).slice(8))} \\p{L}{3}`, 'u')
      for (const words of [nearWords, todayWords, minuteWords]) expect(words(at, zone, nowAt)).toMatch(day)
      if (away > 0) expect(nearDayWords(date, dayNumber('2026-04-15'))).toMatch(day)
    }),
  )
})
