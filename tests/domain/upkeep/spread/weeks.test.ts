import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isoWeek } from '../../../../main/domain/calendar/days.ts'
import type { ListedDue } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { targetDay, visitKey, weekWishes } from '../../../../main/domain/upkeep/spread/weeks.ts'
import { spread } from './spreadAtOnce.ts'

const plan = { beginsOn: '2026-04-13', weeks: 52, overdueWeeks: 3 }
const due = (dueOn: string, firstOn = dueOn, lastOn = dueOn): ListedDue => ({
  planId: 'p',
  ruleOn: dueOn,
  dueOn,
  firstOn,
  lastOn,
  state: 'later',
  projected: false,
})
const weekdays = (date: string) => Temporal.PlainDate.from(date).dayOfWeek < 6

describe('windows in weeks', () => {
  it.each([
    ['within a week', due('2026-04-22', '2026-04-20', '2026-04-26'), { first: 1, last: 1, due: 1 }],
    ['over the border', due('2026-04-22', '2026-04-19', '2026-04-27'), { first: 0, last: 2, due: 1 }],
    ['begun before today', due('2026-04-13', '2026-03-01', '2026-05-01'), { first: 0, last: 2, due: 0 }],
    ['overdue', due('2026-01-14', '2026-01-01', '2026-02-01'), { first: 0, last: 2, due: -13 }],
    ['over the new year', due('2027-01-02', '2026-12-30', '2027-01-05'), { first: 37, last: 38, due: 37 }],
  ])('%s', (_, visit, expected) => {
    expect(weekWishes([visit], plan, '2026-04-15')).toEqual([{ id: visitKey(visit), ...expected }])
  })

  it('of weeks that begin on another day: a Sunday is the first of its week, not the last', () => {
    const sundays = { ...plan, beginsOn: '2026-04-12' }
    const visit = due('2026-04-19', '2026-04-18', '2026-04-25')
    expect(weekWishes([visit], sundays, '2026-04-15')).toMatchObject([{ first: 0, last: 1, due: 1 }])
    expect(weekWishes([visit], plan, '2026-04-15')).toMatchObject([{ first: 0, last: 1, due: 0 }])
    expect(targetDay(visit, 1, sundays, '2026-04-15', () => true)).toBe('2026-04-19')
  })
})

describe('the day of a week to aim at', () => {
  it.each([
    ['the due day in its own week', due('2026-04-22', '2026-04-20', '2026-05-01'), 1, '2026-04-22'],
    ['the last of an earlier week', due('2026-04-22', '2026-04-14', '2026-05-01'), 0, '2026-04-17'],
    ['the first of a later week', due('2026-04-22', '2026-04-20', '2026-05-01'), 2, '2026-04-27'],
    ['the first day the window allows', due('2026-04-25', '2026-04-23', '2026-04-24'), 1, '2026-04-24'],
    ['not a day gone by', due('2026-04-13', '2026-04-13', '2026-05-01'), 0, '2026-04-15'],
  ])('%s', (_, visit, week, expected) => {
    expect(targetDay(visit, week, plan, '2026-04-15', weekdays)).toBe(expected)
  })

  it('is none where every day is closed', () => {
    expect(targetDay(due('2026-04-22'), 1, plan, '2026-04-15', () => false)).toBeNull()
  })

  it('lies in the ISO week the spread chose, and in the window of every visit placed', () => {
    const visit = fc
      .tuple(
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 4, max: 30 }),
      )
      .map(([n, early, late]) => {
        const on = Temporal.PlainDate.from('2026-04-20').add({ days: n })
        return due(on.toString(), on.subtract({ days: early }).toString(), on.add({ days: late }).toString())
      })
    const visits = fc.uniqueArray(visit, { selector: visitKey, maxLength: 30 })
    fc.assert(
      fc.property(visits, list => {
        const byKey = new Map(list.map(one => [visitKey(one), one]))
        const { placed } = spread(weekWishes(list, plan, '2026-04-15'), Array(52).fill(1))
        for (const { id, week } of placed) {
          const day = targetDay(byKey.get(id)!, week, plan, '2026-04-15', () => true)!
          const monday = Temporal.PlainDate.from(plan.beginsOn).add({ weeks: week }).toString()
          expect(isoWeek(day)).toMatchObject({ isoWeek: isoWeek(monday).isoWeek })
          expect(day >= byKey.get(id)!.firstOn && day <= byKey.get(id)!.lastOn).toBe(true)
        }
      }),
    )
  })
})
