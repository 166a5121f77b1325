import { expect, test } from 'vitest'
import { readPast } from '../../../app/parts/pastText.ts'
import { minuteOf } from '../../../main/domain/calendar/index.ts'

const at = (text: string) => minuteOf(Temporal.Instant.from(text))
const newYork = 'America/New_York'
// 15 April 2026, 10:40 in New York.
const now = at('2026-04-15T14:40:00Z')

test.each([
  ['10:15', '2026-04-15T14:15:00Z'],
  ['5 pm', '2026-04-15T21:00:00Z'],
  ['yesterday 17:30', '2026-04-14T21:30:00Z'],
  ['Yesterday, 5:30 pm', '2026-04-14T21:30:00Z'],
  ['2026-03-01 08:00', '2026-03-01T13:00:00Z'],
  ['2026-03-01T08:00', '2026-03-01T13:00:00Z'],
])('"%s" is %s', (text, instant) => {
  expect(readPast(text, now, newYork)).toBe(at(instant))
})

test.each(['', 'noon', '25:00', 'tomorrow 08:00', '2026-02-30 08:00', '2026-04-14'])(
  '"%s" is no time',
  text => {
    expect(readPast(text, now, newYork)).toBeNull()
  },
)

test('A quarter-hour zone keeps its minutes', () => {
  // +05:45 by the IANA time zone database; 20:15 there.
  expect(readPast('20:00', at('2026-04-15T14:30:00Z'), 'Asia/Kathmandu')).toBe(at('2026-04-15T14:15:00Z'))
})

test('A time the clock showed twice is the later one that has passed', () => {
  // New York leaves daylight time on 1 November 2026 at 06:00Z (IANA time zone database): 01:30 comes at 05:30Z and 06:30Z.
  expect(readPast('01:30', at('2026-11-01T05:45:00Z'), newYork)).toBe(at('2026-11-01T05:30:00Z'))
  expect(readPast('01:30', at('2026-11-01T12:00:00Z'), newYork)).toBe(at('2026-11-01T06:30:00Z'))
})
