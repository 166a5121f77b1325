import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { dueList } from '../../../../main/domain/upkeep/plan/dueList.ts'
import { standsThrough } from '../../../../main/domain/upkeep/plan/standsThrough.ts'
import { visitsAfter } from '../../../../main/domain/upkeep/plan/visitsAfter.ts'
import { day, plan, records, weekdays, zone } from './arbitraries.ts'

it('gives from the words of alike plans what the due list projects from each plan', () => {
  let followed = 0
  fc.assert(
    fc.property(plan, records, day(900), (plan, records, today) => {
      const entry = { plan, records, car: { soldOn: null, away: [] } }
      const ask = { zone, isOpen: weekdays, today, until: dateOfDay(dayNumber(today) + 1_500) }
      const { open, alike } = standsThrough(entry, ask)
      if (!open || alike === null || open.dueOn > ask.until) return
      const projected = dueList([entry], ask).filter(each => each.projected)
      followed += projected.length
      // As of every plan whose open visit was to come today at the latest, and as of this one.
      const latest = (...days: string[]) => days.toSorted().at(-1) ?? ''
      const { dueOn, ruleOn } = open
      const shared = { alike, dueOn: latest(dueOn, today), ruleOn: latest(dueOn, ruleOn, today) }
      const asked = alike.startsWith('last-done') ? [open, shared] : [open]
      for (const found of visitsAfter(
        asked.map(each => ({ ...each, alike })),
        ask,
      ))
        expect(found.map(visit => ({ ...visit, planId: plan.id }))).toEqual(projected)
    }),
    { numRuns: 500 },
  )
  expect(followed).toBeGreaterThan(500)
})
