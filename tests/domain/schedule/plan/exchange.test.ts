import { expect, test } from 'vitest'
import { findCircle, transfersOf } from '../../../../main/domain/schedule/plan/exchange.ts'
import { laid } from './cases.ts'
import { verifyFloor } from './verifyFloor.ts'

const go = (from: string, to: string, at = 60) => ({ at, from, to })

test('a chain is no circle, however long, and neither are moves at different minutes', () => {
  expect(findCircle([go('a', 'b'), go('b', 'c'), go('c', 'd')])).toBeUndefined()
  expect(findCircle([go('a', 'b'), go('b', 'a', 75)])).toBeUndefined()
})

test('two or three that take each other’s bays are one, and a chain that leads into it is not part of it', () => {
  expect(findCircle([go('a', 'b'), go('b', 'a')])).toHaveLength(2)
  const circle = [go('a', 'b'), go('b', 'c'), go('c', 'a')]
  expect(findCircle([go('x', 'y'), ...circle, go('d', 'x')])).toEqual(circle)
})

test('the transfers of a plan are its changes of bay', () => {
  const step = (bay: string, start: number) => ({ bay, start, end: start + 30, crew: [] })
  const plan = { car: { steps: [step('a', 0), step('a', 30), step('b', 90)], handover: 120 } }
  expect(transfersOf(plan)).toEqual([go('a', 'b', 90)])
})

test('where one of two equal bays is free, two cars that want each other’s kind of bay use it', () => {
  // "there" and "back" want to change between the kinds at the same minute; the second bay of kind b lets them.
  const work = { kind: 'work', minutes: 60, skill: null, crew: 0, split: false } as const
  const car = (id: string, ...needs: string[]) => ({
    id,
    release: 0,
    due: 120,
    weight: 1,
    steps: needs.map(need => ({ ...work, needs: need, waitMin: 0, waitMax: 0 })),
  })
  const floor = {
    grid: 15,
    horizon: 120,
    open: [{ from: 0, to: 120 }],
    bays: [
      { id: 'a', can: ['a'], closed: [] },
      { id: 'b1', can: ['b'], closed: [] },
      { id: 'b2', can: ['b'], closed: [] },
    ],
    crew: [],
    fixed: [],
    jobs: [car('there', 'a', 'b'), car('back', 'b', 'a')],
  }
  const { plan, objective } = laid(floor)
  expect(verifyFloor(floor, plan!)).toEqual([])
  expect(objective).toEqual({ weightedTardiness: 0, blockedOpen: 0, moves: 2 })
  // With both bays of the kind in use all the time, nobody can be the first, and the hours are too few for another way.
  const full = { ...floor, jobs: [...floor.jobs, car('stays', 'b', 'b')] }
  expect(laid(full)).toMatchObject({ plan: undefined, proven: true })
})
