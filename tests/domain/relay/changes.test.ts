import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  acceptedPlan,
  changesOf,
  objections,
  presentCost,
  type RelayTask,
  together,
} from '../../../main/domain/relay/index.ts'
import { laid, smallFloor } from '../schedule/plan/cases.ts'

/** A floor laid by one set of promises, and how another would have it. */
function proposal(floor: RelayTask['floor']) {
  const present = laid({ ...floor, jobs: floor.jobs.map((job, j) => ({ ...job, weight: 3 - (j % 3) })) }).plan
  const plan = laid({ ...floor, jobs: floor.jobs.map(job => ({ ...job, due: 0 })) }, 5).plan
  return present && plan ? { task: { floor, present }, plan } : null
}

test('any part of a proposal that holds what it needs is sound by itself', () => {
  let parts = 0
  fc.assert(
    fc.property(smallFloor(4, true), floor => {
      const found = proposal(floor)
      if (!found) return
      const { task, plan } = found
      const changes = changesOf(task, plan)
      for (const { jobId } of changes) {
        const chosen = together(changes, [jobId])
        if (chosen.size < changes.length) parts++
        const mixed = acceptedPlan(task, plan, chosen)
        const against = objections(task, mixed, chosen).filter(({ violations }) => violations.length > 0)
        expect(against).toEqual([])
      }
    }),
    { numRuns: 80, seed: 27 },
  )
  expect(parts).toBeGreaterThan(2)
})

test('a car in a place that another keeps is objected to', () => {
  const step = { kind: 'work', minutes: 60, skill: null, crew: 0, split: false, needs: 'wet' } as const
  const job = (id: string) => ({ id, release: 0, due: 60, weight: 1, steps: [step] })
  const at = (start: number) => ({
    steps: [{ bay: 'b', start, end: start + 60, crew: [] }],
    handover: start + 60,
  })
  const task: RelayTask = {
    floor: {
      grid: 15,
      horizon: 480,
      open: [{ from: 0, to: 480 }],
      bays: [{ id: 'b', can: ['wet'], closed: [] }],
      crew: [],
      fixed: [],
      jobs: [job('a'), job('c')],
    },
    present: { a: at(0), c: at(60) },
  }
  const plan = { a: at(60), c: at(0) }
  const changes = changesOf(task, plan)
  expect(changes.map(({ jobId, needs }) => [jobId, needs])).toEqual([
    ['c', ['a']],
    ['a', ['c']],
  ])
  expect([...together(changes, ['a'])].sort()).toEqual(['a', 'c'])
  expect(changes[0]).toMatchObject({ was: { lateMin: 60 }, becomes: { lateMin: 0 } })
  const alone = acceptedPlan(task, plan, new Set(['a']))
  expect(objections(task, alone, ['a'])).toMatchObject([{ jobId: 'a', violations: [{ code: 'bayTaken' }] }])
})

const wash = { kind: 'work', minutes: 60, skill: null, crew: 0, split: false, needs: 'wet' } as const
const hour = (bay: string, start: number, end = start + 60) => ({
  steps: [{ bay, start, end, crew: [] }],
  handover: end,
})
const twoBays: RelayTask['floor'] = {
  grid: 15,
  horizon: 480,
  open: [{ from: 0, to: 480 }],
  bays: ['a', 'b'].map(id => ({ id, can: ['wet'], closed: [] })),
  crew: [],
  fixed: [],
  jobs: ['early', 'late'].map(id => ({ id, release: 0, due: 480, weight: 1, steps: [wash] })),
}

test('a car that gets the time of another takes it along where the two borrow one thing, and only then', () => {
  const present = { early: hour('a', 0), late: hour('b', 60) }
  const plan = { early: hour('a', 60), late: hour('b', 0) }
  const needs = (...things: string[][]) => {
    const jobs = twoBays.jobs.map((job, j) => ({ ...job, things: things[j] }))
    return changesOf({ floor: { ...twoBays, jobs }, present }, plan).map(change => change.needs)
  }
  expect(needs()).toEqual([[], []])
  expect(needs(['car'], ['box'])).toEqual([[], []])
  expect(needs(['car'], ['car'])).toEqual([['early'], ['late']])
})

test('a step that takes longer in the same place is a change, and what the floor costs now leaves out who has no place', () => {
  const task: RelayTask = { floor: twoBays, present: { early: hour('a', 0) } }
  const plan = { early: hour('a', 0, 75), late: hour('b', 60) }
  expect(changesOf(task, plan).map(change => change.jobId)).toEqual(['early', 'late'])
  expect(changesOf(task, { early: hour('a', 0) })).toEqual([])
  expect(presentCost(task)).toEqual({ weightedTardiness: 0, blockedOpen: 0, moves: 0 })
})
