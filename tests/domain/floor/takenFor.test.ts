import { beforeEach, expect, it } from 'vitest'
import { type FloorJob, type FloorStep, takenFor } from '../../../main/domain/floor/index.ts'
import type { Floor } from '../../../main/services/floor/floor.ts'

type Changes = Partial<Omit<FloorStep, 'crewIds'>> & { crewIds?: string[] }
const step = (change: Changes = {}): FloorStep => ({
  position: 0,
  kind: 'work',
  name: 'Wash',
  stage: 'prepare',
  needs: 'wet',
  skill: 'wash',
  crewCount: 1,
  minutes: 60,
  splittable: false,
  sameBay: false,
  waitMin: null,
  waitMax: null,
  moveAfterMin: null,
  productId: null,
  bayId: 'bay',
  plannedAt: 100,
  plannedEndAt: 160,
  startAt: 100,
  endAt: 160,
  actualStartAt: null,
  actualEndAt: null,
  movedToBayId: null,
  movedAt: null,
  crewIds: ['mika'],
  ...change,
})
const car = (id: string, own: FloorStep, change: Partial<FloorJob> = {}): FloorJob => ({
  id,
  number: 1,
  status: 'inShop',
  plate: '',
  coveredBy: null,
  promisedAt: 160,
  plannedHandoverAt: 160,
  handoverAt: 160,
  leavesAt: 160,
  arrivedAt: 90,
  steps: [own],
  ...change,
})

let floor: Pick<Floor, 'bayNames' | 'crewNames' | 'jobNames' | 'jobs'>
const names = {
  bayNames: new Map([['bay', 'Bay 1']]),
  crewNames: new Map([['mika', 'Mika']]),
  jobNames: new Map([['other', 'KFR 204 (job 1)']]),
}
const mine = car('mine', step())
const taken = (jobs: FloorJob[], at = 120, own = step(), job = mine) => {
  floor = { ...names, jobs }
  return takenFor(floor as Floor, job, own, at)
}
beforeEach(() => {
  floor = { ...names, jobs: [] }
})

it('asks where another car stands in the bay at that minute', () => {
  const idle = car('other', step({ crewIds: ['jo'] }))
  expect(taken([idle])).toEqual(['Bay 1 is taken by KFR 204 (job 1).'])
  expect(taken([idle], 100)).toHaveLength(1)
  expect(taken([idle], 99)).toEqual([])
  expect(taken([idle], 160)).toEqual([])
  expect(taken([idle], 120, step({ bayId: 'elsewhere' }))).toEqual([])
})

it('asks about the bay no more once its car has begun a step there', () => {
  const idle = car('other', step({ crewIds: ['jo'] }))
  const begun = (bayId: string) => ({
    ...mine,
    steps: [step({ bayId, actualStartAt: 100, actualEndAt: 110 }), step({ position: 1 })],
  })
  expect(taken([idle], 120, step(), begun('bay'))).toEqual([])
  expect(taken([idle], 120, step(), begun('elsewhere'))).toHaveLength(1)
})

it('asks where its people are in the middle of other work, wherever that is', () => {
  const working = car('other', step({ bayId: 'elsewhere', actualStartAt: 100 }))
  expect(taken([working])).toEqual(['Mika is still on "Wash" of KFR 204 (job 1).'])
  expect(taken([working], 120, step({ crewIds: ['jo'] }))).toEqual([])
  expect(taken([car('other', step({ bayId: 'elsewhere' }))])).toEqual([])
  expect(taken([car('other', step({ bayId: 'elsewhere', actualStartAt: 100, actualEndAt: 110 }))])).toEqual(
    [],
  )
})

it('says both, of cars that are here and not of itself', () => {
  const both = car('other', step({ actualStartAt: 100 }))
  expect(taken([both])).toHaveLength(2)
  expect(taken([{ ...both, status: 'booked' }])).toEqual([])
  expect(taken([{ ...both, id: 'mine' }])).toEqual([])
})

it('has words for what has no name any more', () => {
  const strange = car('strange', step({ bayId: 'gone', actualStartAt: 100, crewIds: ['left'] }))
  expect(taken([strange], 120, step({ bayId: 'gone', crewIds: ['left'] }))).toEqual([
    'Its bay is taken by another car.',
    'Somebody is still on "Wash" of another car.',
  ])
})
