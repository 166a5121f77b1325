import fc from 'fast-check'
import { expect, test } from 'vitest'
import { allocate } from '../../../main/domain/money/allocate.ts'

// Largest remainder (Hamilton) by hand.
test('What is left over goes to the largest remainders, ties to the earlier part', () => {
  expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33])
  expect(allocate(101, ['0.5', '0.25', '0.25'])).toEqual([51, 25, 25])
  expect(allocate(-5, [1, 1])).toEqual([-3, -2])
  expect(allocate(7, [0, 3])).toEqual([0, 7])
})

test('Weights that take away, or none at all, are refused', () => {
  expect(() => allocate(100, [1, -1])).toThrow(
    expect.objectContaining({ code: 'weight-negative', field: 'weights.1' }),
  )
  expect(() => allocate(100, [0, 0])).toThrow(
    expect.objectContaining({ code: 'weights-empty', field: 'weights' }),
  )
})

test('Whole weights give the same whether they come as numbers or as texts', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }),
      fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 6 }),
      (total, weights) => {
        fc.pre(weights.some(weight => weight > 0))
        expect(allocate(total, weights)).toEqual(allocate(total, weights.map(String)))
      },
    ),
  )
})
