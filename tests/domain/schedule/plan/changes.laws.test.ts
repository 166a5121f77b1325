import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { countChanges, isChanged } from '../../../../main/domain/schedule/plan/changes.ts'
import { layFloor } from '../../../../main/domain/schedule/plan/layFloor.ts'
import { isBetter } from '../../../../main/domain/schedule/plan/seed.ts'
import { isSound, tidied } from '../../../../main/domain/schedule/plan/tidy.ts'
import type { FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import { cases } from '../../cases.ts'
import { bestByTrying } from './bruteFloor.ts'
import { laid, lastOf, lending, shrunk, smallFloor } from './cases.ts'
import { countFloor, verifyFloor } from './verifyFloor.ts'

/**
 * A floor as it stood before a bay was closed for a while, or things were lent: its plan then is the present one.
 */
function withPresent(floor: FloorProblem, b: number, lend = (same: FloorProblem) => same) {
  const present = laid(floor).plan
  const closed = [{ from: floor.horizon >> 2, to: floor.horizon >> 1 }]
  const bays = floor.bays.map((bay, i) =>
    i === b % floor.bays.length ? { ...bay, closed: [...bay.closed, ...closed] } : bay,
  )
  return { present, floor: lend({ ...floor, bays }) }
}

const relaid = (floor: FloorProblem, present: ReturnType<typeof laid>['plan']) =>
  lastOf(layFloor(floor, { present }))

describe('with a present plan', () => {
  test('late minutes, blocked minutes and moves are the same as without, and all is proven and sound', () => {
    fc.assert(
      fc.property(smallFloor(3, true), fc.nat(3), lending, (before, b, lend) => {
        const { present, floor } = withPresent(before, b, lend)
        const { plan, objective, bound, proven } = relaid(floor, present)
        const alone = laid(floor)
        expect(proven).toBe(true)
        expect(plan === undefined).toBe(alone.plan === undefined)
        if (!plan) return
        expect(verifyFloor(floor, plan)).toEqual([])
        const { changes, ...costs } = objective!
        expect(costs).toEqual(alone.objective)
        expect(costs).toEqual(countFloor(floor, plan))
        if (!present) return
        expect(changes).toBe(countChanges(present, plan))
        expect(bound).toEqual(objective)
      }),
      { numRuns: cases(200), seed: 23 },
    )
  })

  test('no plan as good changes fewer cars, by trying every plan', () => {
    let changed = 0
    fc.assert(
      fc.property(smallFloor(2), fc.nat(3), (before, b) => {
        const { present, floor } = withPresent(shrunk(before), b)
        // Of a team of two only one pair is tried.
        const alone = floor.jobs.every(job => job.steps.every(step => step.kind === 'hold' || step.crew < 2))
        if (!present || !alone) return
        const best = bestByTrying(floor, (job, plan) => Number(isChanged(present[job.id], plan)))
        const { objective } = relaid(floor, present)
        if (objective?.changes) changed++
        expect(objective && Object.values(objective)).toEqual(best)
      }),
      { numRuns: cases(200), seed: 24 },
    )
    expect(changed).toBeGreaterThan(cases(10))
  })

  test('it is never worse than the present one where that obeys the rules, whenever it is stopped', () => {
    let sound = 0
    fc.assert(
      fc.property(smallFloor(3), fc.nat(3), fc.integer({ min: 1, max: 12 }), (before, b, yields) => {
        const { present, floor } = withPresent(before, b)
        if (!present || !isSound(floor, present)) return
        sound++
        // Other promises, so that something else may be best.
        const due = { ...floor, jobs: floor.jobs.map((job, j) => ({ ...job, due: j % 2 ? 0 : job.due })) }
        const { objective } = lastOf(layFloor(due, { present }), yields)
        expect(isBetter(countFloor(due, present), objective!)).toBe(false)
      }),
      { numRuns: 100, seed: 25 },
    )
    expect(sound).toBeGreaterThan(10)
  })
})

test('what is put back costs nothing and is sound', () => {
  fc.assert(
    fc.property(smallFloor(3, true), fc.nat(3), lending, (before, b, lend) => {
      const { present, floor } = withPresent(before, b, lend)
      const { plan } = laid(floor, 3)
      if (!present || !plan) return
      const tidy = tidied(floor, plan, present)
      expect(verifyFloor(floor, tidy)).toEqual([])
      expect(isBetter(countFloor(floor, plan), countFloor(floor, tidy))).toBe(false)
      expect(countChanges(present, tidy)).toBeLessThanOrEqual(countChanges(present, plan))
    }),
    { numRuns: cases(100), seed: 26 },
  )
})
