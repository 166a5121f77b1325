import { describe, expect, it } from 'vitest'
import { durationText, readDuration } from '../../app/parts/durationText.ts'
import { numberRemedy, readNumber } from '../../app/parts/numberText.ts'
import { readPast } from '../../app/parts/pastText.ts'
import { columnWords, fullWords, longWords, nearWords } from '../../app/parts/time.ts'
import { readWall } from '../../app/parts/wallText.ts'
import { atWall, durationWords, minuteWords, weekdayDate } from '../../main/domain/calendar/index.ts'
import { speaking } from '../../main/services/desk/speaking.ts'

const zone = 'Europe/Vienna'
const at = (date: string, hour = 9) => atWall(date, hour * 60, zone)
const nowAt = at('2026-04-14', 23)

/** What is said in German at a desk in a country. */
const german = <T>(said: () => T, country = 'AT'): T => speaking('de', said, { country })

describe('a German desk', () => {
  it('writes a day with its full stop and names weekdays in German', () => {
    expect(german(() => weekdayDate('2026-04-16'))).toBe('Do, 16. April 2026')
    expect(german(() => longWords(at('2026-08-01', 17), zone, nowAt))).toBe('Sa, 1. August, 17:00')
    expect(german(() => nearWords(at('2026-04-16', 14), zone, nowAt))).toBe('Do 14:00')
    expect(german(() => fullWords(at('2027-11-06'), zone))).toBe('Sa, 6. November 2027, 09:00')
    expect(german(() => minuteWords(at('2026-04-16'), zone, nowAt))).toBe('Donnerstag 09:00')
    expect(german(() => columnWords('2026-04-16'))).toBe('Do 16.')
    expect(columnWords('2026-04-16', false)).toBe('16')
  })

  it('reads and writes durations in its own words', () => {
    expect(german(() => durationText(2 * 1440 + 240))).toBe('2 Tage 4 h')
    expect(german(() => durationWords(2 * 1440))).toBe('2 Tage')
    expect(readDuration('1 Tag 4 Std')).toBe(1680)
    expect(readDuration('2 Wochen')).toBe(20_160)
    expect(readDuration('1 Stunde 30 Minuten')).toBe(90)
    expect(readDuration(german(() => durationText(1440)))).toBe(1440)
  })

  it('takes 1.500 for one and a half thousand where a comma stands before the decimals, and only there', () => {
    expect(german(() => readNumber('1.500', {}))).toBe(1500)
    expect(german(() => readNumber('1.500,5', {}))).toBe(1500.5)
    expect(german(() => readNumber('12,5', {}))).toBe(12.5)
    expect(german(() => readNumber('12.5', {}))).toBe(12.5)
    expect(german(() => readNumber('1.500', {}), 'CH')).toBe(1.5)
    expect(readNumber('1.500', {})).toBe(1.5)
  })

  it('groups thousands as the country does', () => {
    expect(german(() => numberRemedy({ least: 1, most: 20_000, whole: true }), 'DE')).toBe(
      'Eine ganze Zahl von 1 bis 20.000 eingeben.',
    )
  })

  it('reads what happened as it is said there', () => {
    expect(readPast('gestern 17:30', nowAt, zone)).toBe(readPast('yesterday 17:30', nowAt, zone))
    expect(readPast('3.4.2026 8 Uhr', nowAt, zone)).toBe(at('2026-04-03', 8))
    expect(readPast('31.4.2026 8 Uhr', nowAt, zone)).toBeNull()
    expect(readWall('8 Uhr')).toBe(480)
  })
})
