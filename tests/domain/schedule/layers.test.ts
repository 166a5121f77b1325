import { expect, test } from 'vitest'
import { baysFor, waitRange } from '../../../main/domain/schedule/layers.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import type { Step } from '../../../main/domain/schedule/types.ts'
import { example } from './example.ts'

const prepared = prepare(example)
const step: Step = { kind: 'hold', minutes: 60 }
const able = (change: Partial<Step>) => baysFor(prepared, { ...step, ...change } as Step).map(({ id }) => id)

test('A step stands in the bays that can take it, and only in those it names', () => {
  expect(able({})).toEqual(['wash', 'clean'])
  expect(able({ needs: 'clean' })).toEqual(['clean'])
  expect(able({ bays: ['wash'] })).toEqual(['wash'])
  expect(able({ needs: 'clean', bays: ['wash'] })).toEqual([])
})

test('A wait is rounded inwards to the grid', () => {
  // 60 minutes of the step before, then 20 to 50 of waiting: 80 to 110 minutes, which holds quarters 6 and 7.
  expect(waitRange(prepared, { ...step, waitMin: 20, waitMax: 50 }, 60)).toEqual({ from: 6, to: 7 })
  expect(waitRange(prepared, step, 60)).toEqual({ from: 4, to: Number.POSITIVE_INFINITY })
})
