import { expect, test } from 'vitest'
import { isMovableFrom, lastActual, lastRecorded, notYet } from '../../../main/domain/job/index.ts'

const step = (
  kind: string,
  endAt: number,
  actual: [number?, number?] = [],
  waitMin: number | null = null,
) => ({
  kind,
  endAt,
  waitMin,
  actualStartAt: actual[0] ?? null,
  actualEndAt: actual[1] ?? null,
})

test('Steps come in their turn, and a wait is kept to the minute', () => {
  const steps = [step('work', 60, [0, 60]), step('hold', 120), step('work', 200, [], 15), step('work', 260)]
  expect(notYet(steps, 0, 61)).toEqual({ why: 'begun', at: 0 })
  expect(notYet(steps, 2, 134)).toEqual({ why: 'tooEarly', step: steps[1], readyAt: 135 })
  expect(notYet(steps, 2, 135)).toBeNull()
  expect(notYet(steps, 3, 500)).toEqual({ why: 'notItsTurn', step: steps[2] })
  expect(notYet([step('work', 60)], 0, -5)).toBeNull()
})

test('The last time recorded is the last step’s end, else its start', () => {
  const running = [step('work', 60, [0, 60]), step('work', 90, [60])]
  expect([lastRecorded(running), lastActual(running)]).toEqual([1, 60])
  const done = [step('work', 60, [0, 61]), step('work', 90)]
  expect([lastRecorded(done), lastActual(done)]).toEqual([0, 61])
  expect([lastRecorded([]), lastActual([])]).toEqual([-1, null])
})

test('A stay is movable while nothing from its first step on has begun; a hold stays with its coat', () => {
  const steps = [step('work', 60, [0, 60]), step('hold', 120), step('work', 200), step('work', 260)]
  expect(steps.map((_, i) => isMovableFrom(steps, i))).toEqual([false, false, true, true])
  expect(isMovableFrom([step('work', 60), step('work', 90, [60])], 0)).toBe(false)
})
