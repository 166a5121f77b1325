// What a plan may say: the limits are ours, their words must name the field.
import { describe, expect, it } from 'vitest'
import { dueList } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { planDay } from '../../../../main/domain/upkeep/plan/limits.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import { type Anchor, checkAbsences, checkPlan, type Plan } from '../../../../main/domain/upkeep/plan/plan.ts'

const zone = 'America/New_York'
const question = { today: '2026-11-28', zone }
const here = { soldOn: null, away: [] }

function planOf(rule: string, anchor: Anchor = { to: 'date', on: '2026-11-29' }): Plan {
  return { id: rule, kind: 'other', title: 'wash', rule, anchor, earlyDays: 7, lateDays: 7 }
}

const since = (on: string): Anchor => ({ to: 'last-done', since: on, event: 'the coating' })

describe('a plan', () => {
  it.each([
    ['FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30', undefined],
    ['FREQ=DAILY;UNTIL=20261128', undefined],
    // Once, from the last visit done, is done already.
    ['FREQ=DAILY;COUNT=1', since('2026-11-29')],
  ])('is refused when its rule never comes: %s', (rule, anchor) => {
    expect(() => checkPlan(planOf(rule, anchor), zone)).toThrow(
      expect.objectContaining({ code: 'rule-never', field: 'rule' }),
    )
  })

  it('may come once, on its own date', () => {
    expect(() => checkPlan(planOf('FREQ=DAILY;COUNT=1'), zone)).not.toThrow()
  })

  it.each([
    [{ to: 'date', on: '1969-12-31' }, 'anchor.on'],
    [{ to: 'date', on: '9999-12-31' }, 'anchor.on'],
    [since('2100-01-01'), 'anchor.since'],
  ] as const)('is refused when it counts from %j', (anchor, field) => {
    expect(() => checkPlan(planOf('FREQ=YEARLY', anchor), zone)).toThrow(
      expect.objectContaining({ code: 'date-far', field }),
    )
  })

  it('takes the first and the last day there are', () => {
    expect(planDay('1970-01-01', 'on')).toBe(0)
    expect(planDay('2099-12-31', 'on')).toBe(47_481)
  })
})

it.each([
  ['2026-12-01', '9999-12-31', 'date-far'],
  ['2026-12-01', '2032-12-01', 'absence-long'],
  ['2026-12-01', '2026-12-01', 'absence-backwards'],
])('an absence from %s to %s is refused: %s', (from, to, code) => {
  expect(() => checkAbsences([{ from, to }])).toThrow(expect.objectContaining({ code, field: 'away.0.to' }))
})

it('an absence of five years is taken', () => {
  expect(() => checkAbsences([{ from: '2026-12-01', to: '2031-12-01' }])).not.toThrow()
})

describe('visits of a rule that comes often, nobody having come for long', () => {
  // 28 November 2026 is a Saturday; the days before it counted off on a wall calendar.
  it.each([
    ['FREQ=WEEKLY;BYDAY=MO,TU', '1975-01-06', '2026-11-30'],
    ['FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR', '2000-01-03', '2026-11-30'],
    ['FREQ=DAILY', '1970-01-01', '2026-11-28'],
    ['FREQ=DAILY;COUNT=1000', '1970-01-01', '1972-09-26'],
  ])('%s from %s', (rule, on, dueOn) => {
    const plan = {
      ...planOf(rule, { to: 'date', on }),
      earlyDays: 2,
    }
    const due = nextDue(plan, [], here, question)
    expect(due).toMatchObject({ dueOn, missed: 99 })
    expect(due.sentence).toContain('The 99 or more visits before it were missed.')
  })
})

describe('a list', () => {
  it('refuses to look further ahead than 25 years', () => {
    expect(() => dueList([], { ...question, until: '9999-12-31' })).toThrow(
      expect.objectContaining({ code: 'until-far', field: 'until' }),
    )
  })

  it('leaves out plans that cannot be worked out, each with its reason, and keeps the others', () => {
    const good = planOf('FREQ=YEARLY')
    const entries = [
      planOf('FREQ=YEARLY;INTERVAL=9000'),
      planOf('FREQ=DAILY;BYHOUR=9,17'),
      good,
      { ...planOf('FREQ=DAILY;INTERVAL=90'), anchor: { to: 'date', on: '9999-12-31' } as const },
    ].map(plan => ({ plan, records: [], car: here }))
    const away = {
      plan: { ...good, id: 'away' },
      records: [],
      car: { soldOn: null, away: [{ from: '2026-11-01', to: '9999-12-31' }] },
    }
    const reasons: [string, string][] = []
    const list = dueList([...entries, away], { ...question, until: '2026-12-31' }, (id, { code }) =>
      reasons.push([id, code]),
    )
    expect(list.map(({ planId, dueOn }) => [planId, dueOn])).toEqual([['FREQ=YEARLY', '2026-11-29']])
    expect(reasons).toEqual([
      ['FREQ=YEARLY;INTERVAL=9000', 'rule-bad'],
      ['FREQ=DAILY;BYHOUR=9,17', 'rule-too-fine'],
      ['FREQ=DAILY;INTERVAL=90', 'date-far'],
      ['away', 'date-far'],
    ])
    expect(() => dueList(entries, { ...question, until: '2026-12-31' })).toThrow('INTERVAL=9000')
  })
})
