import { expect, test } from 'vitest'
import { betterIn, groundOf, improvementOf, nearGoal } from '../../../main/domain/schedule/goals.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Offer } from '../../../main/domain/schedule/types.ts'
import { at, example } from './example.ts'

const than = promise(example).soonest as Offer
const goal = { kind: 'earlierHandover', than } as const

test('With the clean bay free all day the car goes home at 14:30 on the first', () => {
  // Washed from 08:00, coated from 09:00, cured from 10:30 to 14:30: 23 hours before 13:30 on the second day.
  const better = betterIn(groundOf(example, goal), { ...example, fixed: [], horizon: than.handover - 1 })!
  const { plan, gain } = improvementOf(goal, better)
  expect(plan.handover).toBe(at(14, 30))
  expect(gain).toBe(23 * 60)
})

test('The exact answer cannot be bettered', () => {
  const ground = groundOf(example, goal)
  expect(betterIn(ground, ground.near)).toBeUndefined()
})

test('What begins after the goal is left out', () => {
  const late = { bay: 'wash', from: than.handover, to: than.handover + 60 }
  const near = nearGoal({ ...example, fixed: [...example.fixed, late] }, goal)
  expect(near.fixed).toEqual(example.fixed)
  expect(near.horizon).toBe(than.handover - 1)
})
