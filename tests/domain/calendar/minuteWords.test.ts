import { describe, expect, it } from 'vitest'
import {
  atWall,
  datedWords,
  dayNumber,
  durationWords,
  minuteWords,
  momentWords,
} from '../../../main/domain/calendar/index.ts'
import { nearDayWords } from '../../../main/services/shelf/lotViews.ts'

const zone = 'Europe/Berlin'
const at = (date: string, hour = 9) => atWall(date, hour * 60, zone)
// 2026-12-26 is a Saturday.
const nowAt = at('2026-12-26', 23)

describe('a minute', () => {
  it('is a clock today, a weekday within six days either way, a date from the seventh day on', () => {
    const said = (date: string, hour: number) => minuteWords(at(date, hour), zone, nowAt)
    expect(said('2026-12-26', 0)).toBe('00:00')
    expect(said('2026-12-27', 0)).toBe('Sunday 00:00')
    expect(said('2027-01-01', 23)).toBe('Friday 23:00')
    expect(said('2027-01-02', 0)).toBe('Sat 2 January 2027 00:00')
    expect(said('2026-12-20', 0)).toBe('Sunday 00:00')
    expect(said('2026-12-19', 23)).toBe('Sat 19 December 23:00')
  })

  it('bears its year where it is kept, and where it is another', () => {
    expect(momentWords(nowAt, zone)).toBe('Sat 26 December 2026, 23:00')
    expect(datedWords(at('2026-12-28'), zone, nowAt)).toBe('Mon 28 December 09:00')
    expect(datedWords(at('2027-12-28'), zone, nowAt)).toBe('Tue 28 December 2027 09:00')
  })
})

it('a day of the shelf is named by its weekday up to six days ahead, and by its date beyond', () => {
  const said = (date: string) => nearDayWords(date, dayNumber('2026-12-26'))
  expect(said('2026-12-26')).toBe('today')
  expect(said('2026-12-27')).toBe('tomorrow')
  expect(said('2027-01-01')).toBe('Friday')
  expect(said('2027-01-02')).toBe('Saturday 2 January 2027')
  expect(said('2026-12-25')).toBe('Friday 25 December')
})

it('a duration is said in days, hours and minutes', () => {
  expect(durationWords(0)).toBe('0 min')
  expect(durationWords(90)).toBe('1 h 30 min')
  expect(durationWords(47 * 60 + 59)).toBe('47 h 59 min')
  expect(durationWords(48 * 60)).toBe('2 days')
  expect(durationWords(52 * 60 + 5)).toBe('2 days 4 h')
})
