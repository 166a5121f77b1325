import { describe, expect, it } from 'vitest'
import { atWall, minuteOf } from '../../../main/domain/calendar/index.ts'
import { type DateOrder, readTime } from '../../../main/domain/cure/readingTime.ts'

const zone = 'America/New_York'
const local = atWall('2026-03-04', 14 * 60 + 5, zone)

describe('the time of a row', () => {
  it.each<[string, DateOrder]>([
    ['2026-03-04 14:05', 'mdy'],
    ['2026-03-04T14:05:59', 'dmy'],
    ['2026/3/4 14:05:59.250', 'ymd'],
    ['03/04/2026 14:05', 'mdy'],
    ['3/4/26 2:05 PM', 'mdy'],
    ['3/4/2026, 2:05:10 p.m.', 'mdy'],
    ['04.03.2026 14:05', 'dmy'],
    ['26-03-04 14:05', 'ymd'],
  ])('%s (%s)', (text, order) => {
    expect(readTime(text, order, zone)).toEqual({ at: local, laterAt: null })
  })

  it.each(['2026-03-04T19:05Z', '2026-03-04 14:05:00-05:00', '2026-03-04T20:05:30.5+0100'])('%s', text => {
    expect(readTime(text, 'mdy', 'Asia/Kolkata')!.at).toBe(
      minuteOf(Temporal.Instant.from('2026-03-04T19:05Z')),
    )
  })

  it('takes seconds and milliseconds since 1970', () => {
    expect(readTime('1772651100', 'ymd', zone)!.at).toBe(29_544_185)
    expect(readTime('1772651100999', 'ymd', zone)!.at).toBe(29_544_185)
  })

  it.each([
    ['12:00 AM', 0],
    ['12:30 am', 30],
    ['12:00 PM', 720],
    ['11:59 PM', 1439],
  ])('%s', (text, wallMin) => {
    expect(readTime(`3/4/2026 ${text}`, 'mdy', zone)!.at).toBe(atWall('2026-03-04', wallMin, zone))
  })

  it('gives both moments of a wall time that comes twice, and one of a skipped one', () => {
    const twice = readTime('2026-11-01 01:30', 'ymd', zone)!
    expect(twice.laterAt! - twice.at).toBe(60)
    expect(readTime('2026-03-08 02:30', 'ymd', zone)).toEqual({
      at: atWall('2026-03-08', 210, zone),
      laterAt: null,
    })
  })

  it.each([
    '',
    'yesterday',
    '2026-02-30 10:00',
    '2026-13-01 10:00',
    '2026-03-04 24:00',
    '2026-03-04 10:60',
    '2026-03-04 10:00:60',
    '3/4/2026 13:00 PM',
    '3/4/2026 0:30 AM',
    '2026-03-04T25:05Z',
    '2026-03-04',
  ])('refuses "%s"', text => {
    expect(readTime(text, 'mdy', zone)).toBeNull()
  })
})
