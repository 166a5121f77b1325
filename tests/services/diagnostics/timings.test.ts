import { expect, it } from 'vitest'
import { noteCall, slowestCalls } from '../../../main/services/diagnostics/timings.ts'
import type { Store } from '../../../main/store/store.ts'

/** Only told from another. */
const store = () => ({}) as Store

it('adds up the calls of a procedure and keeps the slowest of them', () => {
  const one = store()
  expect(slowestCalls(one, 5)).toEqual([])
  for (const ms of [3, 9, 4]) noteCall(one, 'jobs.get', ms)
  expect(slowestCalls(one, 5)).toEqual([['jobs.get', { calls: 3, totalMs: 16, slowestMs: 9 }]])
})

it('names those first that took longest at the worst, and no more than asked for', () => {
  const one = store()
  for (const [path, ms] of [
    ['a', 5],
    ['b', 20],
    ['a', 7],
    ['c', 1],
    ['c', 8],
  ] as const)
    noteCall(one, path, ms)
  expect(slowestCalls(one, 3).map(([path]) => path)).toEqual(['b', 'c', 'a'])
  expect(slowestCalls(one, 2).map(([path]) => path)).toEqual(['b', 'c'])
})

it('knows nothing of another shop’s', () => {
  const [one, other] = [store(), store()]
  noteCall(one, 'a', 1)
  noteCall(other, 'b', 2)
  expect(slowestCalls(one, 5)).toEqual([['a', { calls: 1, totalMs: 1, slowestMs: 1 }]])
})
