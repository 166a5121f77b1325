import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { visitAnswered } from '../../../../main/domain/upkeep/plan/closes.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { VisitRecord } from '../../../../main/domain/upkeep/plan/plan.ts'
import { car, day, plan, records, weekdays, zone } from './arbitraries.ts'

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
