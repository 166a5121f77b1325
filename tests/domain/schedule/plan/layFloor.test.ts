import { describe, expect, test } from 'vitest'
import { layFloor } from '../../../../main/domain/schedule/plan/layFloor.ts'
import { isBetter } from '../../../../main/domain/schedule/plan/seed.ts'
import { floorCases, laid, lastOf } from './cases.ts'
import { countFloor, verifyFloor } from './verifyFloor.ts'

describe('the small cases of small.json', () => {
  for (const { floor, optimal } of floorCases('small'))
    test(`${floor.id} is laid to its proven optimum`, () => {
      const { plan, objective, bound, proven } = laid(floor)
      expect(proven).toBe(true)
      expect(verifyFloor(floor, plan!)).toEqual([])
      expect({ ...objective, proven }).toEqual({
        weightedTardiness: optimal.weightedTardiness,
        blockedOpen: optimal.blockedOpen,
        moves: optimal.moves,
        proven: optimal.proven,
      })
      expect(countFloor(floor, plan!)).toEqual(objective)
      expect(bound).toEqual(objective)
    })
})

test('the weeks of medium.json: m01 and m03 reach what is noted there', () => {
  for (const { floor, optimal } of floorCases('medium').filter(({ floor }) => /m01|m03/.test(floor.id!))) {
    const { plan, objective, proven } = laid(floor)
    expect(proven).toBe(true)
    expect(verifyFloor(floor, plan!)).toEqual([])
    const { weightedTardiness, blockedOpen, moves } = optimal
    expect(objective).toEqual({ weightedTardiness, blockedOpen, moves })
  }
})

describe('a search that is stopped', () => {
  const { floor } = floorCases('medium').find(one => one.floor.id === 'm02')!

  test('leaves a sound plan at every yield, none worse than the one before, and bounds that hold', () => {
    const search = layFloor(floor)
    const plans = new Set<unknown>()
    let before: ReturnType<typeof laid> | undefined
    for (let i = 0; i < 400; i++) {
      const { value, done } = search.next()
      if (value.plan) {
        if (value.plan !== before?.plan) expect(verifyFloor(floor, value.plan)).toEqual([])
        if (before?.objective) expect(isBetter(before.objective, value.objective!)).toBe(false)
        expect(isBetter(value.objective!, value.bound)).toBe(false)
        plans.add(value.plan)
      }
      before = value
      if (done) break
    }
    expect(plans.size).toBeGreaterThan(1)
  })

  test('gives the same answer for the same seed and number of yields', () => {
    const [one, two] = [1, 2].map(() => lastOf(layFloor(floor, { seed: 7 }), 15))
    expect(one).toEqual(two)
  })
})

test('the plan it begins with is kept where nothing is better', () => {
  const { floor } = floorCases('small')[3]!
  const present = laid(floor).plan!
  expect(lastOf(layFloor(floor, { present, seed: 9 })).plan).toBe(present)
})

describe('a floor that nothing fits', () => {
  const { floor } = floorCases('small')[0]!

  test('because one car has no place says so as proven', () => {
    const jobs = floor.jobs.map(job => ({
      ...job,
      steps: job.steps.map(step => ({ ...step, needs: 'lift' })),
    }))
    const { plan, proven } = laid({ ...floor, jobs })
    expect(plan).toBeUndefined()
    expect(proven).toBe(true)
  })

  test('because the cars are too many for the time says so too', () => {
    const [job] = floor.jobs
    const jobs = Array.from({ length: 4 }, (_, j) => ({ ...job!, id: `j${j}` }))
    const { plan, proven } = laid({ ...floor, jobs, open: [{ from: 480, to: 630 }] })
    expect(plan).toBeUndefined()
    expect(proven).toBe(true)
  })
})

test('cars never change places, so the second waits outside', () => {
  // Two cars, two bays: each begins where the other must go on, at the same minute.
  const work = { kind: 'work', minutes: 60, skill: null, crew: 0, split: false } as const
  const floor = {
    grid: 15,
    horizon: 480,
    open: [{ from: 0, to: 480 }],
    bays: ['a', 'b'].map(id => ({ id, can: [id], closed: [] })),
    crew: [],
    fixed: [],
    jobs: [
      {
        id: 'there',
        release: 0,
        due: 120,
        weight: 1,
        steps: [
          { ...work, needs: 'a' },
          { ...work, needs: 'b' },
        ],
      },
      {
        id: 'back',
        release: 0,
        due: 120,
        weight: 1,
        steps: [
          { ...work, needs: 'b' },
          { ...work, needs: 'a' },
        ],
      },
    ],
  }
  const { plan, objective } = laid(floor)
  expect(verifyFloor(floor, plan!)).toEqual([])
  // Whoever is second begins when the first has gone home: two hours later than wished.
  expect(objective!.weightedTardiness).toBe(120)
})
