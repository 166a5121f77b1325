import { describe, expect, it } from 'vitest'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { CarTimes } from '../../../../main/domain/upkeep/plan/plan.ts'
import { ask, here, topper } from './samples.ts'

describe('a car away for the winter', () => {
  const winter = (from: string, to: string): CarTimes => ({
    soldOn: null,
    away: [{ from, to, why: 'laid up' }],
  })

  it('comes before it leaves when that is nearer and still in the window', () => {
    const due = nextDue(topper, [], winter('2026-09-10', '2027-04-01'), ask('2026-07-01'))
    expect(due).toMatchObject({
      dueOn: '2026-09-09',
      firstOn: '2026-08-31',
      lastOn: '2026-09-09',
      ruleOn: '2026-09-14',
    })
    expect(due.sentence).toContain(
      'put before it leaves, as the car is away from 10 September 2026 until 1 April 2027 (laid up)',
    )
  })

  it('comes after it is back when that is nearer', () => {
    const due = nextDue(topper, [], winter('2026-08-20', '2026-09-20'), ask('2026-07-01'))
    expect(due).toMatchObject({ dueOn: '2026-09-20', firstOn: '2026-09-20', lastOn: '2026-09-28' })
  })

  it('comes on the first day back when its whole window lies in the absence', () => {
    const due = nextDue(topper, [], winter('2026-08-01', '2027-03-20'), ask('2026-07-01'))
    expect(due).toMatchObject({ dueOn: '2027-03-20', firstOn: '2027-03-20', lastOn: '2027-04-03' })
    expect(due.sentence).toContain('later than its window')
  })

  it('is not asked to come on a day that has passed', () => {
    const due = nextDue(topper, [], winter('2026-09-10', '2026-09-25'), ask('2026-09-12'))
    expect(due.dueOn).toBe('2026-09-25')
  })

  it('has a window that stops where the absence begins', () => {
    expect(nextDue(topper, [], winter('2026-09-20', '2027-04-01'), ask('2026-07-01'))).toMatchObject({
      dueOn: '2026-09-14',
      lastOn: '2026-09-19',
    })
    expect(nextDue(topper, [], winter('2026-08-01', '2026-09-05'), ask('2026-07-01'))).toMatchObject({
      dueOn: '2026-09-14',
      firstOn: '2026-09-05',
    })
  })

  it('takes absences that touch for one', () => {
    const car = {
      soldOn: null,
      away: [
        { from: '2026-09-20', to: '2026-10-20' },
        { from: '2026-09-01', to: '2026-09-20' },
      ],
    }
    expect(nextDue(topper, [], car, ask('2026-07-01')).dueOn).toBe('2026-08-31')
  })

  it('keeps a day agreed with the owner', () => {
    const moved = [{ what: 'moved', dueOn: '2026-09-14', to: '2026-12-01' }] as const
    expect(nextDue(topper, moved, winter('2026-11-01', '2027-04-01'), ask('2026-09-01')).dueOn).toBe(
      '2026-12-01',
    )
  })
})

describe('a sold car', () => {
  it.each([
    ['sold already', '2026-03-20', '2026-04-01', null],
    ['to be sold before the visit', '2026-09-14', '2026-04-01', null],
    ['to be sold after the visit', '2026-09-15', '2026-04-01', '2026-09-14'],
  ])('%s', (_, soldOn, today, dueOn) => {
    const due = nextDue(topper, [], { soldOn, away: [] }, ask(today))
    expect(due.dueOn).toBe(dueOn)
    if (dueOn === null) expect(due).toMatchObject({ because: 'sold' })
  })
})

describe('open days', () => {
  const weekend = (date: string) => Temporal.PlainDate.from(date).dayOfWeek < 6

  it('lands on the nearest, the earlier of two as near', () => {
    // 14 September 2026 is a Monday.
    expect(nextDue(topper, [], here, ask('2026-07-01', weekend)).dueOn).toBe('2026-09-14')
    const saturday = {
      ...topper,
      anchor: { to: 'last-done', since: '2026-03-12', event: 'the coating' },
    } as const
    expect(nextDue(saturday, [], here, ask('2026-07-01', weekend)).dueOn).toBe('2026-09-11')
    const sunday = {
      ...topper,
      anchor: { to: 'last-done', since: '2026-03-13', event: 'the coating' },
    } as const
    const due = nextDue(sunday, [], here, ask('2026-07-01', weekend))
    expect(due.dueOn).toBe('2026-09-14')
    expect(due.sentence).toContain('put on the nearest open day')
  })

  it('waits for the first open day after a window in which the shop is closed', () => {
    const due = nextDue(
      topper,
      [],
      here,
      ask('2026-07-01', date => date >= '2026-10-12'),
    )
    expect(due).toMatchObject({ dueOn: '2026-10-12', firstOn: '2026-10-12' })
    expect(due.sentence).toContain('first open day after its window')
  })

  it('leaves a day in the past as it was', () => {
    expect(
      nextDue(
        topper,
        [],
        here,
        ask('2026-09-20', () => false),
      ).dueOn,
    ).toBe('2026-09-14')
  })
})
