import { describe, expect, it } from 'vitest'
import { fullWords, longWords, nearWords } from '../../../app/parts/time.ts'
import { atWall } from '../../../main/domain/calendar/index.ts'

const zone = 'America/New_York'
const at = (date: string, hour = 9) => atWall(date, hour * 60, zone)

describe('a moment beside another', () => {
  // 2026-12-26 is a Saturday, 2027-01-01 a Friday, 2027-01-02 a Saturday.
  const nowAt = at('2026-12-26', 23)

  it('is named by its weekday up to six days off, and by its date from the seventh on', () => {
    expect(nearWords(at('2026-12-28'), zone, nowAt)).toBe('Mon 09:00')
    expect(nearWords(at('2027-01-01', 23), zone, nowAt)).toBe('Fri 23:00')
    expect(nearWords(at('2027-01-02', 0), zone, nowAt)).toBe('Sat 2 January 2027, 00:00')
    expect(nearWords(at('2026-12-20', 0), zone, nowAt)).toBe('Sun 00:00')
    expect(nearWords(at('2026-12-19', 23), zone, nowAt)).toBe('Sat 19 December, 23:00')
  })

  it('bears its year only where that is another, and always where it is kept', () => {
    expect(longWords(at('2026-12-31'), zone, nowAt)).toBe('Thu 31 December, 09:00')
    expect(longWords(at('2027-12-31'), zone, nowAt)).toBe('Fri 31 December 2027, 09:00')
    expect(longWords(at('2027-12-31'), zone)).toBe('Fri 31 December, 09:00')
    expect(fullWords(at('2026-12-31'), zone)).toBe('Thu 31 December 2026, 09:00')
  })

  it('counts the days of the shop, not hours: the clocks going forward make six days an hour shorter', () => {
    expect(nearWords(at('2026-03-13', 23), zone, at('2026-03-07', 0))).toBe('Fri 23:00')
    expect(nearWords(at('2026-03-14', 0), zone, at('2026-03-07', 23))).toBe('Sat 14 March, 00:00')
  })
})
