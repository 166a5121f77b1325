import { expect, test } from 'vitest'
import { latticeStep } from '../../../main/domain/shelf/lattice.ts'

test('A third of a draw, in whole parts of the pack', () => {
  expect(latticeStep(10_000, 3_000, 0)).toBe(1_000)
  expect(latticeStep(10_000, 2_700, 0)).toBe(10_000 / 11)
})

test('Never finer than a forty-eighth of the pack, nor than an eightieth of what is ahead', () => {
  expect(latticeStep(48_000, 1, 0)).toBe(1_000)
  expect(latticeStep(48_000, 1, 960_000)).toBe(12_000)
})

test('A draw larger than the pack counts in packs', () => {
  expect(latticeStep(10_000, 90_000, 0)).toBe(10_000)
})
