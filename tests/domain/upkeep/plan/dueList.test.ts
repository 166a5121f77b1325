import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { dueList } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { Plan } from '../../../../main/domain/upkeep/plan/plan.ts'
import { car, day, plan, records, weekdays, zone } from './arbitraries.ts'

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
