import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPlan } from '../../../main/domain/schedule/checkPlan.ts'
import { promise, promiseOf } from '../../../main/domain/schedule/promise.ts'
import type { Objective, OfferKind, Offers, Problem } from '../../../main/domain/schedule/types.ts'
import { smallProblem } from './cases.ts'
import { promiseCases } from './referenceCases.ts'
import { count, verify } from './verify.ts'

const kinds: readonly OfferKind[] = ['soonest', 'leastBlocked', 'askedDay']

function figuresOf(offers: Offers): (Objective | undefined)[] {
  return kinds.map(kind => {
    const offer = offers[kind]
    if (!offer.feasible) return undefined
    const { dropOff, handover, blockedOpen, moves } = offer
    return { dropOff, handover, blockedOpen, moves }
  })
}

// Source: tests/reference/scheduling/promise.json, eleven invented cases, optima proven with CP-SAT (OR-Tools 9.15).
describe('the proven optima of promise.json', () => {
  const cases = promiseCases()
  test('are eleven', () => expect(cases).toHaveLength(11))
  for (const { problem, optimal } of cases)
    test(`${problem.id}`, () => {
      const offers = promise(problem)
      for (const kind of kinds) {
        const offer = offers[kind]
        const { proven, feasible, ...figures } = optimal[kind]
        expect(proven).toBe(true)
        expect(offer.feasible, kind).toBe(feasible !== false)
        if (!offer.feasible) continue
        expect(offer, kind).toMatchObject(figures)
        expect(verify(problem, offer.plan)).toEqual([])
        expect(checkPlan(problem, offer.plan)).toEqual([])
        const { dropOff, handover, blockedOpen, moves } = offer
        expect(count(problem, offer.plan)).toEqual({ dropOff, handover, blockedOpen, moves })
      }
    })
})

/** The same shop with its lists in another order and everything called something else. */
function shuffled(problem: Problem, seed: number): Problem {
  const mixed = <T>(items: readonly T[]): T[] =>
    items
      .map((item, i) => ({ item, at: Math.imul(i + 1, 2654435761 + seed) >>> 0 }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item)
  const other = (id: string) => `${(id.charCodeAt(id.length - 1) * 7 + seed) % 97}-${id}`
  return {
    ...problem,
    open: mixed(problem.open),
    bays: mixed(problem.bays.map(bay => ({ ...bay, id: other(bay.id), closed: mixed(bay.closed) }))),
    crew: mixed(problem.crew.map(person => ({ ...person, id: other(person.id), away: mixed(person.away) }))),
    fixed: mixed(problem.fixed.map(stay => ({ ...stay, bay: other(stay.bay) }))),
  }
}

describe('names and order', () => {
  test('change no objective of the reference cases', () => {
    for (const { problem } of promiseCases())
      for (const seed of [1, 2, 3])
        expect(figuresOf(promise(shuffled(problem, seed)))).toEqual(figuresOf(promise(problem)))
  })

  test('change no objective of random cases', () => {
    fc.assert(
      fc.property(smallProblem({ extensions: false }), fc.nat(1000), (problem, seed) => {
        expect(figuresOf(promise(shuffled(problem, seed)))).toEqual(figuresOf(promise(problem)))
      }),
      { numRuns: 200 },
    )
  })
})

describe('one offer alone', () => {
  const same = (problem: Problem) => {
    const offers = promise(problem)
    for (const kind of kinds) expect(promiseOf(problem, kind), kind).toEqual(offers[kind])
  }

  test('is the one that all three hold', () => {
    for (const { problem } of promiseCases()) same(problem)
    fc.assert(fc.property(smallProblem({ extensions: true }), same), { numRuns: 200 })
  })

  test('is the same for a later day and a nearer end, whatever was asked of these hours before', () => {
    const again = (problem: Problem, laterBy: number, nearerBy: number) => {
      promise(problem)
      const { newJob } = problem
      const release = newJob.release + laterBy * problem.grid
      const horizon = Math.max(release + problem.grid, problem.horizon - nearerBy * problem.grid)
      const asked = { ...problem, horizon, newJob: { ...newJob, release, asked: release } }
      for (const kind of kinds)
        expect(promiseOf(asked, kind), kind).toEqual(promiseOf({ ...asked, open: [...asked.open] }, kind))
    }
    fc.assert(fc.property(smallProblem({ extensions: true }), fc.nat(40), fc.nat(20), again), {
      numRuns: 200,
    })
  })

  test('also where it lies weeks ahead', () => {
    const days = Array.from({ length: 60 }, (_, day) => ({ from: day * 1440 + 480, to: day * 1440 + 1080 }))
    const bays = [{ id: 'A', can: [], closed: [{ from: 0, to: 20 * 1440 + 900 }] }]
    const coat = { kind: 'work', minutes: 120, skill: null, crew: 0, split: false } as const
    const steps = [coat, { kind: 'hold', minutes: 300 }, coat] as const
    const newJob = { id: 'new', release: 0, asked: 3 * 1440, steps }
    const problem: Problem = { grid: 15, horizon: 60 * 1440, open: days, bays, crew: [], fixed: [], newJob }
    // Coated by 18:00, cured at 23:00 and coated again from 08:00: 16:00 is the latest that costs no day.
    expect(promise(problem).soonest).toMatchObject({ dropOff: 20 * 1440 + 960, handover: 21 * 1440 + 600 })
    same(problem)
  })
})
