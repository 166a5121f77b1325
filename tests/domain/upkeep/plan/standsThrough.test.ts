import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { dueList } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { standsThrough } from '../../../../main/domain/upkeep/plan/standsThrough.ts'
import { car, day, plan, records, weekdays, zone } from './arbitraries.ts'

const later = (on: string, days: number) => dateOfDay(dayNumber(on) + days)
const latest = (...days: string[]) => days.toSorted().at(-1) ?? ''
const here = { soldOn: null, away: [] }

describe('an open visit worked out once', () => {
  it('is what the due list gives, on every day it is said to stand', () => {
    let stoodOn = 0
    fc.assert(
      fc.property(
        plan,
        records,
        fc.oneof(car, fc.constant(here)),
        day(900),
        fc.nat(400),
        (plan, records, car, today, days) => {
          const entry = { plan, records, car }
          const ask = { zone, isOpen: weekdays }
          const { open, throughOn } = standsThrough(entry, { ...ask, today })
          expect(throughOn >= today).toBe(true)
          for (const on of [today, [later(today, days), throughOn].toSorted()[0]!]) {
            if (on > today) stoodOn++
            const list = dueList([entry], { ...ask, today: on, until: later(on, 9_000) })
            // Agreed for later, it may come after those that follow it.
            const listed = list.find(each => !each.projected)
            const { ruleOn, dueOn, firstOn, lastOn } = listed ?? {}
            expect(listed ? { ruleOn, dueOn, firstOn, lastOn } : null).toEqual(open)
          }
        },
      ),
      { numRuns: 1_000 },
    )
    expect(stoodOn).toBeGreaterThan(100)
  })

  it('is followed by the same visits in plans of the same words', () => {
    let shared = 0
    fc.assert(
      fc.property(
        plan,
        fc.array(fc.tuple(fc.integer({ min: -20, max: 20 }), records), { minLength: 2, maxLength: 12 }),
        day(900),
        (plan, others, today) => {
          const ask = { zone, isOpen: weekdays, today }
          const seen = new Map<string, unknown>()
          for (const [shift, records] of others) {
            const { anchor } = plan
            const like =
              anchor.to === 'date'
                ? plan
                : { ...plan, anchor: { ...anchor, since: later(anchor.since, shift) } }
            const entry = { plan: like, records, car: here }
            const { open, alike } = standsThrough(entry, ask)
            if (!open || alike === null) continue
            const from = latest(open.dueOn, today)
            const key = alike.startsWith('last-done')
              ? `${alike} ${from} ${latest(from, open.ruleOn)}`
              : `${alike} ${open.ruleOn}`
            const after = dueList([entry], { ...ask, until: later(today, 1_500) }).filter(
              each => each.projected,
            )
            if (seen.has(key)) shared++
            else seen.set(key, after)
            expect(after).toEqual(seen.get(key))
          }
        },
      ),
      { numRuns: 300 },
    )
    expect(shared).toBeGreaterThan(50)
  })
})
