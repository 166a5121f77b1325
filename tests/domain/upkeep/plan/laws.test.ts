import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { visitAnswered } from '../../../../main/domain/upkeep/plan/closes.ts'
import { dueList } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { CarTimes, Plan, VisitRecord } from '../../../../main/domain/upkeep/plan/plan.ts'

const zone = 'Europe/Berlin'
const base = dayNumber('2026-01-01')
const day = (most: number) => fc.integer({ min: 0, max: most }).map(n => dateOfDay(base + n))

const plan: fc.Arbitrary<Plan> = fc.record({
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

const record: fc.Arbitrary<VisitRecord> = fc.oneof(
  fc.record({ what: fc.constant('done' as const), on: day(800), dueOn: fc.option(day(800)) }),
  fc.record({ what: fc.constant('skipped' as const), dueOn: day(800) }),
  fc.record({ what: fc.constant('moved' as const), dueOn: day(800), to: day(900) }),
)

const car: fc.Arbitrary<CarTimes> = fc.record({
  soldOn: fc.option(day(1200), { freq: 4 }),
  away: fc.array(
    fc.tuple(day(1000), fc.integer({ min: 1, max: 150 })).map(([from, days]) => ({
      from,
      to: dateOfDay(dayNumber(from) + days),
    })),
    { maxLength: 2 },
  ),
})

const weekdays = (date: string) => Temporal.PlainDate.from(date).dayOfWeek < 6
const records = fc.array(record, { maxLength: 6 })

describe('every plan', () => {
  it('has a due day inside its window, with a sentence that names it', () => {
    fc.assert(
      fc.property(plan, records, car, day(1000), (p, written, c, today) => {
        const due = nextDue(p, written, c, { today, zone, isOpen: weekdays })
        expect(due.sentence.length).toBeGreaterThan(20)
        if (due.dueOn === null) return
        expect(due.firstOn <= due.dueOn && due.dueOn <= due.lastOn).toBe(true)
        const words = Temporal.PlainDate.from(due.dueOn).toLocaleString('en-GB', { dateStyle: 'long' })
        expect(due.sentence).toContain(words)
        if (c.soldOn !== null) expect(due.dueOn < c.soldOn && today < c.soldOn).toBe(true)
        const moved = written.some(one => one.what === 'moved' && one.dueOn === due.ruleOn)
        if (moved) return
        for (const { from, to } of c.away)
          expect(from <= due.dueOn && due.dueOn < to && due.dueOn >= today).toBe(false)
        if (due.dueOn >= today) expect(weekdays(due.dueOn)).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })

  it('counted from the last visit is always due after it', () => {
    fc.assert(
      fc.property(plan, records, day(900), (p, written, on) => {
        fc.pre(p.anchor.to === 'last-done' && on >= p.anchor.since)
        const all: VisitRecord[] = [...written, { what: 'done', on, dueOn: null }]
        const last = all.reduce((max, one) => (one.what === 'done' && one.on > max ? one.on : max), on)
        const due = nextDue(p, all, { soldOn: null, away: [] }, { today: on, zone })
        if (due.dueOn !== null) expect(due.ruleOn > last).toBe(true)
      }),
    )
  })

  it('moves on when its open visit is done', () => {
    fc.assert(
      fc.property(plan, records, day(1000), (p, written, today) => {
        const free = { soldOn: null, away: [] }
        const due = nextDue(p, written, free, { today, zone })
        fc.pre(due.dueOn !== null)
        // A move of a later visit would rightly keep that later visit's own day.
        fc.pre(!written.some(one => one.what === 'moved'))
        const dueOn = visitAnswered(p, written, today, zone)
        const next = nextDue(p, [...written, { what: 'done', on: today, dueOn }], free, { today, zone })
        const answered = dueOn !== null || p.anchor.to === 'last-done'
        if (answered && next.dueOn !== null) expect(next.dueOn > today || next.dueOn > due.dueOn!).toBe(true)
        else expect(next.dueOn === null || next.dueOn === due.dueOn).toBe(true)
      }),
      { numRuns: 500 },
    )
  })
})

describe('the due list', () => {
  it('begins with what nextDue says of each plan, and projects the rest past it', () => {
    fc.assert(
      fc.property(plan, records, car, day(900), (p, written, c, today) => {
        const until = dateOfDay(dayNumber(today) + 365)
        const list = dueList([{ plan: p, records: written, car: c }], {
          today,
          until,
          zone,
          isOpen: weekdays,
        })
        const due = nextDue(p, written, c, { today, zone, isOpen: weekdays })
        const [first, ...others] = list
        if (due.dueOn === null || due.dueOn > until) {
          expect(list).toEqual([])
          return
        }
        const { planId, ruleOn, dueOn, firstOn, lastOn, state } = due
        expect(list.filter(item => !item.projected)).toEqual([
          { planId, ruleOn, dueOn, firstOn, lastOn, state, projected: false },
        ])
        expect(list.map(item => item.dueOn)).toEqual(list.map(item => item.dueOn).toSorted())
        if (first && !first.projected && p.anchor.to === 'last-done')
          for (const item of others) expect(item.ruleOn > dueOn).toBe(true)
      }),
      { numRuns: 500 },
    )
  })

  it('goes on past a visit moved to an earlier day, and past closed days between daily ones', () => {
    const base = {
      id: 'p',
      kind: 'topper',
      title: 'topper renewal',
      anchor: { to: 'last-done', since: '2026-04-14', event: 'the coating' },
      earlyDays: 7,
      lateDays: 7,
    } as const
    const ask = { today: '2026-04-15', until: '2026-04-24', zone }
    const car = { soldOn: null, away: [] }
    const moved = [{ what: 'moved', dueOn: '2026-04-20', to: '2026-04-16' }] as const
    const plan = { ...base, rule: 'FREQ=DAILY;INTERVAL=6' }
    expect(dueList([{ plan, records: moved, car }], ask).map(item => item.dueOn)).toEqual([
      '2026-04-16',
      '2026-04-22',
    ])
    const daily = { ...base, rule: 'FREQ=DAILY' }
    const days = dueList([{ plan: daily, records: [], car }], { ...ask, isOpen: weekdays }).map(
      item => item.ruleOn,
    )
    expect(days).toEqual([...new Set(days)])
    // Saturday the 25th is put forward to the last day asked for.
    expect(days.at(-1)).toBe('2026-04-25')
  })

  it('projects a topper every half year from an overdue one done today', () => {
    const p: Plan = {
      id: 'p',
      kind: 'topper',
      title: 'topper renewal',
      rule: 'FREQ=MONTHLY;INTERVAL=6',
      anchor: { to: 'last-done', since: '2025-06-01', event: 'the coating' },
      earlyDays: 7,
      lateDays: 7,
    }
    const list = dueList([{ plan: p, records: [], car: { soldOn: null, away: [] } }], {
      today: '2026-04-15',
      until: '2027-04-15',
      zone,
    })
    expect(list.map(({ dueOn, state, projected }) => [dueOn, state, projected])).toEqual([
      ['2025-12-01', 'overdue', false],
      ['2026-10-15', 'later', true],
      ['2027-04-15', 'later', true],
    ])
  })
})

describe('which visit one done answers', () => {
  const yearly: Plan = {
    id: 'i',
    kind: 'inspection',
    title: 'yearly inspection',
    rule: 'FREQ=YEARLY',
    anchor: { to: 'date', on: '2027-04-20' },
    earlyDays: 30,
    lateDays: 30,
  }

  it.each([
    ['2027-03-20', null],
    ['2027-03-21', '2027-04-20'],
    ['2027-12-31', '2027-04-20'],
    ['2028-03-21', '2028-04-20'],
  ])('by dates, one done on %s answers %s', (doneOn, dueOn) => {
    expect(visitAnswered(yearly, [], doneOn, zone)).toBe(dueOn)
  })

  it('goes by the day agreed where it was moved', () => {
    const moved = [{ what: 'moved', dueOn: '2027-04-20', to: '2027-06-30' }] as const
    expect(visitAnswered(yearly, moved, '2027-05-15', zone)).toBeNull()
    expect(visitAnswered(yearly, moved, '2027-06-01', zone)).toBe('2027-04-20')
  })
})
