import fc from 'fast-check'
import { expect, test } from 'vitest'
import { countChanges, isChanged } from '../../../../main/domain/schedule/plan/changes.ts'
import { layFloor } from '../../../../main/domain/schedule/plan/layFloor.ts'
import { repaired } from '../../../../main/domain/schedule/plan/repair.ts'
import { inventedWeek } from '../../../bench/plan/week.ts'
import { laid, smallFloor } from './cases.ts'
import { verifyFloor } from './verifyFloor.ts'

function done<T>(work: Iterator<void, T>): T {
  for (;;) {
    const { value, done } = work.next()
    if (done) return value
  }
}

test('a floor repaired is sound, and whoever could stay stands where they stood', () => {
  let mended = 0
  fc.assert(
    fc.property(smallFloor(3, true), fc.nat(3), fc.boolean(), (before, b, isNew) => {
      const whole = laid(before).plan
      if (!whole) return
      const closed = [{ from: before.horizon >> 2, to: before.horizon >> 1 }]
      const bays = before.bays.map((bay, i) =>
        i === b % before.bays.length ? { ...bay, closed: [...bay.closed, ...closed] } : bay,
      )
      const floor = { ...before, bays }
      // A car that has no place yet, as one that is not booked.
      const present = isNew ? Object.fromEntries(Object.entries(whole).slice(1)) : whole
      const plan = done(repaired(floor, present))
      if (!plan) return
      expect(verifyFloor(floor, plan)).toEqual([])
      const shut = bays[b % bays.length]!
      const hit = (id: string) => {
        const own = present[id]
        return (
          !own ||
          own.steps.some(
            ({ bay, start }, i) =>
              bay === shut.id &&
              start < closed[0]!.to &&
              (own.steps[i + 1]?.start ?? own.handover) > closed[0]!.from,
          )
        )
      }
      for (const { id } of floor.jobs) if (!hit(id)) expect(isChanged(present[id], plan[id]!)).toBe(false)
      if (countChanges(present, plan) > 0) mended++
    }),
    { numRuns: 200, seed: 31 },
  )
  expect(mended).toBeGreaterThan(10)
})

test('with a bay shut, the search begins at most as far from the present plan as the cars that stood there', () => {
  const week = inventedWeek(20, 1)
  const present = laid(week).plan!
  const shut = week.bays[4]!.id
  const floor = {
    ...week,
    bays: week.bays.map(bay => (bay.id === shut ? { ...bay, closed: [{ from: 0, to: week.horizon }] } : bay)),
  }
  const stood = Object.values(present).filter(({ steps }) => steps.some(step => step.bay === shut)).length
  const begun = layFloor(floor, { present, parts: { insertion: false } }).find(({ plan }) => plan)
  expect(stood).toBeGreaterThan(0)
  expect(begun!.objective!.changes).toBeLessThanOrEqual(stood)
})
