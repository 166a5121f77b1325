import { expect, test } from 'vitest'
import type { RelayTask } from '../../../main/domain/relay/index.ts'
import { type Laying, layFloor } from '../../../main/domain/schedule/index.ts'
import { layBeside } from '../../../main/services/dayPlan/layBeside.ts'
import { ownPace } from '../../../main/services/desk/beside.ts'
import { inventedWeek } from '../../bench/plan/week.ts'
import { floorCases, lastOf } from '../../domain/schedule/plan/cases.ts'

/** A floor whose proof would take much longer than any test. */
const endless: RelayTask = { floor: inventedWeek(80, 1), present: {} }

test('a stop is obeyed at the next look, in the middle of a search without end', async () => {
  let looks = 0
  const told: Laying[] = []
  const pace = { ...ownPace(), turn: () => Promise.resolve(++looks < 10) }
  await layBeside(endless, pace, laying => told.push(laying))
  expect(looks).toBe(10)
  const before = told.length
  // The thread is gone: nothing is told any more.
  await new Promise(resolve => setTimeout(resolve, 400))
  expect(told.length).toBe(before)
})

test('one that is stopped before its thread has begun ends too', async () => {
  const pace = { ...ownPace(), turn: () => Promise.resolve(false) }
  await layBeside(endless, pace, () => {})
})

test('left alone, it ends by itself, with what the search comes to without a thread', async () => {
  const { floor } = floorCases('small')[0]!
  let last: Laying | undefined
  await layBeside({ floor, present: {} }, ownPace(), laying => {
    last = laying
  })
  expect(last).toEqual(lastOf(layFloor(floor, { present: {} })))
})

test('what goes wrong in the thread is thrown here', async () => {
  const broken = { ...endless, floor: { ...endless.floor, jobs: null } } as unknown as RelayTask
  await expect(layBeside(broken, ownPace(), () => {})).rejects.toThrow(/null/)
})
