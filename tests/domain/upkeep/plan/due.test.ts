import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dayNumber } from '../../../../main/domain/calendar/index.ts'
import { openVisit } from '../../../../main/domain/upkeep/plan/due.ts'
import type { Plan } from '../../../../main/domain/upkeep/plan/plan.ts'
import type { PlanStanding } from '../../../../main/domain/upkeep/plan/standing.ts'
import { dayRule } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'
import { cases } from '../../cases.ts'

const start = dayNumber('2026-01-05')
const offset = fc.integer({ min: 0, max: 400 })

/** The open visit by going through the rule's days one by one. */
function byWalking(days: number[], plan: Plan, standing: PlanStanding, today: number) {
  const open = days.filter(day => day > standing.after && !standing.skipped.has(day))
  let n = 0
  while (n < open.length && open[n]! < today) {
    const agreed = standing.moved.get(open[n]!)
    if (agreed && agreed.to + plan.lateDays >= today) break
    if (n + 1 === open.length || open[n + 1]! - plan.earlyDays > today) break
    n++
  }
  return open[n] === undefined ? null : { ruleDay: open[n], missed: Math.min(n, 99) }
}

it('the open visit of a plan by dates is the one a walk day by day finds', () => {
  const moves = fc.array(fc.tuple(offset, offset), { maxLength: 4 })
  const rule = fc.constantFrom(
    'FREQ=DAILY',
    'FREQ=DAILY;INTERVAL=7',
    'FREQ=WEEKLY;BYDAY=MO,TH',
    'FREQ=MONTHLY;BYDAY=1MO,FR',
    'FREQ=DAILY;INTERVAL=3;COUNT=40',
  )
  const days = fc.integer({ min: 0, max: 20 })
  fc.assert(
    fc.property(rule, offset, fc.array(offset), moves, days, days, (text, ask, skips, moved, early, late) => {
      const anchor = { to: 'date', on: '2026-01-05' } as const
      const plan: Plan = {
        id: 'p',
        kind: 'other',
        title: 't',
        rule: text,
        anchor,
        earlyDays: early,
        lateDays: late,
      }
      const standing: PlanStanding = {
        start,
        after: start - 1,
        lastDone: null,
        skipped: new Set(skips.map(n => start + n)),
        moved: new Map(moved.map(([n, to]) => [start + n, { to: start + to, why: null }])),
      }
      const read = dayRule(text, 'UTC')
      const all: number[] = []
      for (
        let day = read.next(start, start - 1);
        day !== null && day < start + 900;
        day = read.next(start, day)
      )
        all.push(day)
      const today = start + ask
      expect(openVisit(plan, read, standing, today)).toEqual(byWalking(all, plan, standing, today))
    }),
    { numRuns: cases(2000) },
  )
})
