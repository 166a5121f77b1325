import { expect, test } from 'vitest'
import { hasMovedSince, timesSaid, toldKinds } from '../../../main/domain/job/index.ts'

const job = { dropOffAt: 100, promisedAt: 900, handoverAt: 800 }

test.each([
  ['confirmation', { dropOffAt: 101 }, true],
  ['confirmation', { promisedAt: 899 }, true],
  ['confirmation', { handoverAt: 801 }, false],
  ['dayBefore', { dropOffAt: 99 }, true],
  ['dayBefore', { promisedAt: 901 }, true],
  ['promiseMoved', { promisedAt: 901 }, true],
  ['promiseMoved', { dropOffAt: 101 }, false],
  ['ready', { handoverAt: 801 }, true],
  // Sooner than was said is no harm.
  ['ready', { handoverAt: 700, promisedAt: 1, dropOffAt: 1 }, false],
] as const)('%s, then %o: moved is %s', (kind, change, moved) => {
  expect(hasMovedSince(timesSaid(kind, job, 0), { ...job, ...change })).toBe(moved)
})

test('Nothing has moved where nothing has, and words that name no time never have', () => {
  for (const kind of toldKinds) expect(hasMovedSince(timesSaid(kind, job, 0), job)).toBe(false)
  expect(hasMovedSince({ dropOffAt: null, promisedAt: null, readyAt: null }, job)).toBe(false)
})

test('A car that was ready before is ready now', () => {
  expect(timesSaid('ready', job, 850).readyAt).toBe(850)
  expect(timesSaid('ready', job, 750).readyAt).toBe(800)
})
