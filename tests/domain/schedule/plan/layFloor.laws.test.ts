import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { staysOf } from '../../../../main/domain/schedule/measure.ts'
import type { FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import { cases } from '../../cases.ts'
import { loadHighs } from '../highs.ts'
import { bestByTrying } from './bruteFloor.ts'
import { laid, lending, shrunk, smallFloor } from './cases.ts'
import { floorByMilp } from './floorMilp.ts'
import { countFloor, verifyFloor } from './verifyFloor.ts'

const order = ({ objective }: ReturnType<typeof laid>) =>
  objective ? Object.values(objective) : [Number.POSITIVE_INFINITY, 0, 0]

function atMost(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((cost, at) => cost !== b[at])
  return i < 0 || a[i]! < b[i]!
}

describe('on small floors', () => {
  test('the judge accepts every plan, and every search ends with a proof', () => {
    let helped = 0
    let besides = 0
    fc.assert(
      fc.property(smallFloor(4, true), fc.boolean(), lending, (small, twins, lend) => {
        const floor = lend(twins ? withTwins(small) : small)
        const { plan, objective, proven } = laid(floor)
        if (twins && bothTaken(plan)) besides++
        if (Object.values(plan ?? {}).some(({ steps }) => steps.some(step => step.help))) helped++
        expect(proven).toBe(true)
        if (!plan) return
        expect(verifyFloor(floor, plan)).toEqual([])
        expect(countFloor(floor, plan)).toEqual(objective)
      }),
      { numRuns: cases(300), seed: 16 },
    )
    expect(helped).toBeGreaterThanOrEqual(cases(11))
    expect(besides).toBeGreaterThanOrEqual(cases(4))
  })

  test('one bay more never makes the best plan worse', () => {
    let gained = 0
    fc.assert(
      fc.property(fc.oneof(smallFloor(3, true), crowded), fc.nat(3), (floor, b) => {
        const like = floor.bays[b % floor.bays.length]!
        const wider = { ...floor, bays: [...floor.bays, { ...like, id: 'new', closed: [] }] }
        const [more, before] = [order(laid(wider)), order(laid(floor))]
        if (!atMost(before, more)) gained++
        expect(atMost(more, before)).toBe(true)
      }),
      { numRuns: cases(150), seed: 17 },
    )
    expect(gained).toBeGreaterThanOrEqual(cases(40))
  })

  test('names and their order change nothing', () => {
    fc.assert(
      fc.property(smallFloor(3, true), floor => {
        expect(order(laid(renamed(floor)))).toEqual(order(laid(floor)))
      }),
      { numRuns: cases(100), seed: 18 },
    )
  })

  test('a pinned car never moves', () => {
    fc.assert(
      fc.property(smallFloor(3, true), fc.nat(2), (floor, j) => {
        const plan = laid(floor).plan
        const pinned = floor.jobs[j % floor.jobs.length]!
        if (!plan) return
        const place = plan[pinned.id]!
        const steps = pinned.steps.map((step, i) => {
          const { start, bay } = place.steps[i]!
          return { ...step, startFrom: start, startTo: start, bays: [bay] }
        })
        // Whatever the others gain from being due at once, it stays.
        const jobs = floor.jobs.map(job =>
          job === pinned ? { ...job, steps, weight: 0 } : { ...job, due: 0 },
        )
        const again = laid({ ...floor, jobs }).plan!
        expect(again[pinned.id]!.steps.map(({ bay, start }) => [bay, start])).toEqual(
          place.steps.map(({ bay, start }) => [bay, start]),
        )
      }),
      { numRuns: cases(100), seed: 19 },
    )
  })

  test('nothing is better than the best of all plans there are', () => {
    let found = 0
    // Floors that cost more because something is lent, so that the rule is seen to bind.
    let dearer = 0
    fc.assert(
      fc.property(smallFloor(2), lending, (floor, lend) => {
        const tiny = lend(shrunk(floor))
        const best = bestByTrying(tiny)
        if (best) found++
        if (best && best.join() !== bestByTrying({ ...tiny, jobs: without(tiny), lent: [] })?.join()) dearer++
        expect(order(laid(tiny))).toEqual(best ?? [Number.POSITIVE_INFINITY, 0, 0])
      }),
      { numRuns: cases(150), seed: 20 },
    )
    expect(found).toBeGreaterThan(cases(20))
    expect(dearer).toBeGreaterThanOrEqual(cases(4))
  })
})

test('HiGHS comes to the same objectives', async () => {
  const highs = await loadHighs()
  let found = 0
  fc.assert(
    fc.property(smallFloor(), floor => {
      const tiny = { ...shrunk(floor), horizon: floor.grid * 16 }
      const theirs = floorByMilp(highs, tiny, { mip_rel_gap: 0, mip_abs_gap: 0 })
      const ours = order(laid(tiny))
      if (!theirs) expect(ours[0]).toBe(Number.POSITIVE_INFINITY)
      else {
        found++
        // Cars may change places there, so only a floor that needs it may cost more here.
        expect(ours).toEqual(theirs)
      }
    }),
    { numRuns: 40, seed: 22 },
  )
  expect(found).toBeGreaterThan(8)
})

const without = ({ jobs }: FloorProblem) => jobs.map(job => ({ ...job, things: [] }))

/** Three or four cars that want the same bays at about the same time, and nobody to wait for. */
const crowded: fc.Arbitrary<FloorProblem> = fc
  .record({
    bays: fc.integer({ min: 1, max: 3 }),
    cars: fc.array(
      fc.record({
        release: fc.nat(4).map(n => n * 15),
        due: fc.nat(12).map(n => n * 15),
        minutes: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 2 }),
        sameBay: fc.boolean(),
      }),
      { minLength: 3, maxLength: 4 },
    ),
  })
  .map(({ bays, cars }) => ({
    grid: 15,
    horizon: 600,
    open: [{ from: 0, to: 600 }],
    bays: Array.from({ length: bays }, (_, b) => ({ id: `b${b}`, can: [], closed: [] })),
    crew: [],
    fixed: [],
    jobs: cars.map(({ release, due, minutes, sameBay }, j) => ({
      id: `j${j}`,
      release,
      due,
      weight: 1,
      steps: minutes.map(n => ({
        kind: 'work' as const,
        minutes: n * 15,
        skill: null,
        crew: 0,
        split: false,
        sameBay,
      })),
    })),
  }))

/** Each bay twice, so that no rule can tell the two apart; and nothing to choose between two bays but the other's cars. */
function withTwins(floor: FloorProblem): FloorProblem {
  const twins = floor.bays.map(bay => ({ ...bay, id: `${bay.id} twin` }))
  return { ...floor, bays: [...floor.bays, ...twins] }
}

/** Whether two cars stand in a bay and its twin at the same time. */
function bothTaken(plan: ReturnType<typeof laid>['plan']): boolean {
  const stays = Object.values(plan ?? {}).flatMap(staysOf)
  return stays.some(one =>
    stays.some(other => other.bay === `${one.bay} twin` && one.from < other.to && other.from < one.to),
  )
}

function renamed(floor: FloorProblem): FloorProblem {
  const bay = (id: string) => `z${id}`
  return {
    ...floor,
    bays: floor.bays.map(one => ({ ...one, id: bay(one.id) })).reverse(),
    crew: floor.crew.map(one => ({ ...one, id: `someone ${one.id}` })).reverse(),
    fixed: floor.fixed.map(stay => ({ ...stay, bay: bay(stay.bay) })).reverse(),
    jobs: floor.jobs.map(job => ({ ...job, id: `car ${job.id}` })).reverse(),
  }
}
