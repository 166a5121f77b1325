import { describe, expect, it } from 'vitest'
import {
  checkCalendar,
  checkClosures,
  checkDate,
  checkZone,
  openSpans,
  type ShopCalendar,
} from '../../../main/domain/calendar/index.ts'

const good: ShopCalendar = {
  zone: 'America/New_York',
  weekly: [
    { weekday: 1, from: 480, to: 720 },
    { weekday: 1, from: 720, to: 1440 },
    { weekday: 2, from: 480, to: 1080 },
    { weekday: 7, from: 0, to: 1 },
  ],
  exceptions: [{ date: '2026-12-25', hours: [] }],
}
const refusal = (field: string, code: string) => expect.objectContaining({ name: 'Refusal', field, code })

describe('what a calendar may not be', () => {
  it('takes a sound one', () => expect(() => checkCalendar(good)).not.toThrow())

  it.each<[string, Partial<ShopCalendar>, string, string]>([
    ['an unknown zone', { zone: 'America/Atlantis' }, 'zone', 'zone-unknown'],
    [
      'a weekday that is none',
      { weekly: [{ weekday: 8, from: 0, to: 60 }] },
      'weekly.0.weekday',
      'weekday-bad',
    ],
    [
      'closing before opening',
      { weekly: [{ weekday: 1, from: 600, to: 480 }] },
      'weekly.0.to',
      'hours-backwards',
    ],
    ['an empty opening', { weekly: [{ weekday: 1, from: 600, to: 600 }] }, 'weekly.0.to', 'hours-backwards'],
    [
      'a time past midnight',
      { weekly: [{ weekday: 1, from: 600, to: 1441 }] },
      'weekly.0.to',
      'wall-minute-bad',
    ],
    ['half a minute', { weekly: [{ weekday: 1, from: 0.5, to: 60 }] }, 'weekly.0.from', 'wall-minute-bad'],
    [
      'openings of a weekday that overlap',
      { weekly: [...good.weekly, { weekday: 1, from: 700, to: 730 }] },
      'weekly.4.from',
      'hours-overlap',
    ],
    [
      'a date that is none',
      { exceptions: [{ date: '2026-02-30', hours: [] }] },
      'exceptions.0.date',
      'date-bad',
    ],
    [
      'a date written otherwise',
      { exceptions: [{ date: '20260301', hours: [] }] },
      'exceptions.0.date',
      'date-bad',
    ],
    [
      'a date given twice',
      { exceptions: [...good.exceptions, ...good.exceptions] },
      'exceptions.1.date',
      'date-twice',
    ],
    [
      'hours of a date that overlap',
      {
        exceptions: [
          {
            date: '2026-12-24',
            hours: [
              { from: 480, to: 720 },
              { from: 600, to: 660 },
            ],
          },
        ],
      },
      'exceptions.0.hours.1.from',
      'hours-overlap',
    ],
  ])('refuses %s', (_, change, field, code) => {
    expect(() => checkCalendar({ ...good, ...change })).toThrow(refusal(field, code))
  })

  it('refuses closures that overlap or run backwards, and takes those that touch', () => {
    const closure = (from: number, to: number) => ({ from, to })
    expect(() => checkClosures([closure(100, 200), closure(0, 100)])).not.toThrow()
    expect(() => checkClosures([closure(100, 200), closure(0, 101)])).toThrow(
      refusal('closures.0.from', 'closure-overlap'),
    )
    expect(() => checkClosures([closure(5, 5)], 'bays.2.closures')).toThrow(
      refusal('bays.2.closures.0.to', 'closure-backwards'),
    )
    expect(() => checkClosures([closure(0, Number.NaN)])).toThrow(refusal('closures.0.to', 'minute-bad'))
  })

  it('names the value and the remedy', () => {
    expect(() => checkZone('Moon/Base')).toThrow(/"Moon\/Base" is not a known time zone; choose/)
    expect(() => checkDate('yesterday')).toThrow(/"yesterday" is not a date; write/)
    expect(() => openSpans({ ...good, zone: 'Moon/Base' }, 0, 10)).toThrow(refusal('zone', 'zone-unknown'))
  })
})
