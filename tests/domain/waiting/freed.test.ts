import { expect, test } from 'vitest'
import { freedOf, staysThrough } from '../../../main/domain/waiting/index.ts'

const step = (position: number, bayId: string, startAt: number, moved: [string, number] | null = null) => ({
  position,
  bayId,
  startAt,
  movedToBayId: moved?.[0] ?? null,
  movedAt: moved?.[1] ?? null,
})

test('A car keeps its bay until the next one, also rolled over inside a step', () => {
  const steps = [step(2, 'B', 60), step(0, 'A', 0), step(1, 'A', 30), step(3, 'B', 90, ['C', 120])]
  expect(staysThrough(steps, 200)).toEqual([
    { bay: 'A', from: 0, to: 60 },
    { bay: 'B', from: 60, to: 120 },
    { bay: 'C', from: 120, to: 200 },
  ])
})

test('Free is what it had and has no more, from now on', () => {
  const before = [
    { bay: 'A', from: 0, to: 60 },
    { bay: 'B', from: 60, to: 200 },
  ]
  expect(freedOf(before, [], 30)).toEqual([
    { bay: 'A', from: 30, to: 60 },
    { bay: 'B', from: 60, to: 200 },
  ])
  const now = [
    { bay: 'B', from: 150, to: 260 },
    { bay: 'B', from: 80, to: 100 },
    { bay: 'C', from: 0, to: 400 },
  ]
  expect(freedOf(before, now, 90)).toEqual([{ bay: 'B', from: 100, to: 150 }])
  expect(freedOf(before, [], 200)).toEqual([])
})
