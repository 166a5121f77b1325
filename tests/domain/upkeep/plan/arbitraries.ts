/** Random plans, visits and cars for the laws of plans. */
import fc from 'fast-check'
import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import type { CarTimes, Plan, VisitRecord } from '../../../../main/domain/upkeep/plan/plan.ts'

export const zone = 'Europe/Berlin'
export const base = dayNumber('2026-01-01')
export const day = (most: number) => fc.integer({ min: 0, max: most }).map(n => dateOfDay(base + n))

export const plan: fc.Arbitrary<Plan> = fc.record({
  id: fc.constant('p'),
  kind: fc.constant('topper' as const),
  title: fc.constant('topper renewal'),
  rule: fc.constantFrom(
    'FREQ=DAILY;INTERVAL=90',
    'FREQ=MONTHLY;INTERVAL=6',
    'FREQ=YEARLY',
    'FREQ=WEEKLY;INTERVAL=26',
    'FREQ=MONTHLY;INTERVAL=3;BYDAY=1MO',
    'FREQ=DAILY;COUNT=1',
    'FREQ=MONTHLY;COUNT=4',
  ),
  anchor: fc.oneof(
    day(200).map(on => ({ to: 'date' as const, on })),
    day(200).map(since => ({ to: 'last-done' as const, since, event: 'the coating' })),
  ),
  earlyDays: fc.integer({ min: 0, max: 40 }),
  lateDays: fc.integer({ min: 0, max: 40 }),
})

export const record: fc.Arbitrary<VisitRecord> = fc.oneof(
  fc.record({ what: fc.constant('done' as const), on: day(800), dueOn: fc.option(day(800)) }),
  fc.record({ what: fc.constant('skipped' as const), dueOn: day(800) }),
  fc.record({ what: fc.constant('moved' as const), dueOn: day(800), to: day(900) }),
)

export const car: fc.Arbitrary<CarTimes> = fc.record({
  soldOn: fc.option(day(1200), { freq: 4 }),
  away: fc.array(
    fc.tuple(day(1000), fc.integer({ min: 1, max: 150 })).map(([from, days]) => ({
      from,
      to: dateOfDay(dayNumber(from) + days),
    })),
    { maxLength: 2 },
  ),
})

export const weekdays = (date: string) => Temporal.PlainDate.from(date).dayOfWeek < 6
export const records = fc.array(record, { maxLength: 6 })
