import { describe, expect, it } from 'vitest'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import { checkAbsences, checkPlan } from '../../../../main/domain/upkeep/plan/plan.ts'
import { startingPlans } from '../../../../main/domain/upkeep/plan/startingPlans.ts'
import { ask, here, topper, yearly, zone } from './samples.ts'

describe('a plan anchored to the last visit done', () => {
  it('counts from the coating until the first visit', () => {
    expect(nextDue(topper, [], here, ask('2026-04-01'))).toEqual({
      planId: 't1',
      ruleOn: '2026-09-14',
      dueOn: '2026-09-14',
      firstOn: '2026-08-31',
      lastOn: '2026-09-28',
      state: 'later',
      daysLate: 0,
      missed: 0,
      sentence:
        'Topper renewal is due on 14 September 2026: every 6 months, counted from the coating on 14 March 2026. ' +
        'Any day from 31 August 2026 to 28 September 2026 will do.',
    })
  })

  it.each([
    ['early', '2026-08-01', '2027-02-01'],
    ['when due', '2026-09-14', '2027-03-14'],
    ['late', '2026-11-30', '2027-05-30'],
    ['on the last of a month that its next has not', '2026-08-31', '2027-02-28'],
  ])('counts anew from a visit done %s', (_, on, dueOn) => {
    const due = nextDue(topper, [{ what: 'done', on, dueOn: '2026-09-14' }], here, ask('2026-12-01'))
    expect(due.dueOn).toBe(dueOn)
    expect(due.sentence).toContain('counted from the last one on')
  })

  it('stays open however long nobody comes', () => {
    expect(nextDue(topper, [], here, ask('2028-09-15'))).toMatchObject({
      dueOn: '2026-09-14',
      state: 'overdue',
      daysLate: 732,
      missed: 0,
    })
  })

  it.each([
    ['2026-07-31', 'later'],
    ['2026-08-01', 'soon'],
    ['2026-08-30', 'soon'],
    ['2026-08-31', 'due'],
    ['2026-09-28', 'due'],
    ['2026-09-29', 'overdue'],
  ])('on %s it is %s', (today, state) => {
    expect(nextDue(topper, [], here, ask(today))).toMatchObject({ state })
  })

  it('goes on to the next after a visit is skipped, and says so', () => {
    const due = nextDue(topper, [{ what: 'skipped', dueOn: '2026-09-14' }], here, ask('2026-09-20'))
    expect(due.dueOn).toBe('2027-03-14')
    expect(due.sentence).toContain('after one skipped')
  })

  it('skips also when the rule was changed since', () => {
    const changed = { ...topper, rule: 'FREQ=DAILY;INTERVAL=100' }
    const due = nextDue(changed, [{ what: 'skipped', dueOn: '2026-09-14' }], here, ask('2026-09-20'))
    expect(due.dueOn).toBe('2026-09-30')
  })

  it('moves one visit only, with its window, and forgets the move when it is done', () => {
    const moved = [{ what: 'moved', dueOn: '2026-09-14', to: '2026-10-05', why: 'owner on holiday' }] as const
    const due = nextDue(topper, moved, here, ask('2026-09-20'))
    expect(due).toMatchObject({
      ruleOn: '2026-09-14',
      dueOn: '2026-10-05',
      firstOn: '2026-09-21',
      lastOn: '2026-10-19',
    })
    expect(due.sentence).toContain('moved from 14 September 2026 (owner on holiday)')
    const after = nextDue(
      topper,
      [...moved, { what: 'done', on: '2026-10-06', dueOn: '2026-09-14' }],
      here,
      ask('2026-10-07'),
    )
    expect(after.dueOn).toBe('2027-04-06')
  })
})

describe('a plan that goes by dates', () => {
  it('counts its date as the first visit', () => {
    const due = nextDue(yearly, [], here, ask('2026-12-01'))
    expect(due.dueOn).toBe('2027-04-20')
    expect(due.sentence).toContain('planned for 20 April 2027')
  })

  it.each([
    ['early', '2027-03-25'],
    ['late', '2027-07-01'],
  ])('keeps its dates when a visit is done %s', (_, on) => {
    const done = [{ what: 'done', on, dueOn: '2027-04-20' }] as const
    expect(nextDue(yearly, done, here, ask('2027-08-01')).dueOn).toBe('2028-04-20')
  })

  it('does not count an extra visit for one of its dates', () => {
    const extra = [{ what: 'done', on: '2026-12-24', dueOn: null }] as const
    expect(nextDue(yearly, extra, here, ask('2027-01-01')).dueOn).toBe('2027-04-20')
  })

  it('stays open until the window of the next one, then counts as missed', () => {
    expect(nextDue(yearly, [], here, ask('2028-03-20'))).toMatchObject({
      dueOn: '2027-04-20',
      state: 'overdue',
    })
    const due = nextDue(yearly, [], here, ask('2029-03-21'))
    expect(due).toMatchObject({ dueOn: '2029-04-20', missed: 2, state: 'due' })
    expect(due.sentence).toContain('The 2 visits before it were missed.')
  })

  it('skips only the date named', () => {
    expect(nextDue(yearly, [{ what: 'skipped', dueOn: '2028-04-20' }], here, ask('2027-01-01')).dueOn).toBe(
      '2027-04-20',
    )
    const both = [
      { what: 'done', on: '2027-04-20', dueOn: '2027-04-20' },
      { what: 'skipped', dueOn: '2028-04-20' },
    ] as const
    expect(nextDue(yearly, both, here, ask('2027-05-01')).dueOn).toBe('2029-04-20')
  })

  it('follows any rule of the standard', () => {
    const friday = {
      ...yearly,
      rule: 'FREQ=YEARLY;BYMONTH=10;BYDAY=-1FR',
      anchor: { to: 'date', on: '2026-10-30' },
    } as const
    const due = nextDue(
      friday,
      [{ what: 'done', on: '2026-10-30', dueOn: '2026-10-30' }],
      here,
      ask('2026-11-01'),
    )
    expect(due.dueOn).toBe('2027-10-29')
    expect(due.sentence).toContain('every year in October on the last Friday')
  })

  it('is over after its last date', () => {
    const once = { ...yearly, rule: 'FREQ=DAILY;COUNT=1' }
    const done = [{ what: 'done', on: '2027-04-20', dueOn: '2027-04-20' }] as const
    expect(nextDue(once, done, here, ask('2027-05-01'))).toMatchObject({ dueOn: null, because: 'over' })
  })
})

describe('starting plans', () => {
  it('are the four of a coated car, none of them on the day it leaves', () => {
    const start = { handoverOn: '2026-04-15', firstWashDays: 10, checkUpDays: 30, topperDays: 183 }
    const plans = startingPlans(start, kind => `${kind}-7`)
    const due = plans.map(plan => {
      checkPlan(plan, zone)
      return [plan.id, nextDue(plan, [], here, ask('2026-04-15')).dueOn]
    })
    expect(due).toEqual([
      ['first-wash-7', '2026-04-25'],
      ['check-up-7', '2026-05-15'],
      ['topper-7', '2026-10-15'],
      ['inspection-7', '2027-04-15'],
    ])
    expect(nextDue(plans[0]!, [], here, ask('2026-04-15'))).toMatchObject({ firstOn: '2026-04-25' })
  })
})

describe('what is refused', () => {
  it.each([
    [{ rule: 'FREQ=HOURLY' }, 'rule'],
    [{ anchor: { to: 'date', on: '2026-02-30' } as const }, 'anchor.on'],
    [{ anchor: { to: 'last-done', since: 'spring', event: '' } as const }, 'anchor.since'],
    [{ title: ' ' }, 'title'],
    [{ earlyDays: -1 }, 'earlyDays'],
    [{ lateDays: 1.5 }, 'lateDays'],
  ])('a plan with %j', (change, field) => {
    expect(() => checkPlan({ ...topper, ...change }, zone)).toThrow(expect.objectContaining({ field }))
  })

  it('an absence that ends before it begins', () => {
    expect(() => checkAbsences([{ from: '2026-11-01', to: '2026-11-01' }])).toThrow(
      expect.objectContaining({ code: 'absence-backwards', field: 'away.0.to' }),
    )
  })
})
