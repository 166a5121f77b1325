import { describe, expect, test } from 'vitest'
import { type FloorStep, filledStays, stateOf } from '../../../main/domain/floor/index.ts'
import { hold, laid, products, work } from './sampleJob.ts'

const drawn = (steps: readonly FloorStep[], leavesAt: number, nowAt = 0) =>
  filledStays(
    { steps: steps.map(step => ({ ...step, crew: [] })), leavesAt, leaving: 'covered' },
    products,
    nowAt,
  )

describe('the blocks of a stay', () => {
  test('leave no gap: what lies between two steps is a wait', () => {
    const [stay] = drawn([work(0, 0), work(1, 90), hold(2, 150, 400)], 480)
    expect(stay?.blocks.map(({ kind, fromAt, toAt }) => [kind, fromAt, toAt])).toEqual([
      ['work', 0, 60],
      ['wait', 60, 90],
      ['work', 90, 150],
      ['hold', 150, 400],
      ['wait', 400, 480],
    ])
    expect(stay?.position).toBe(0)
  })

  test('lie in the bay they are worked in, and the car waits where it stands', () => {
    const stays = drawn([work(0, 0), work(1, 90, { bayId: 'two' })], 150)
    expect(stays.map(({ bay, from, to, position }) => [bay, from, to, position])).toEqual([
      ['one', 0, 90, 0],
      ['two', 90, 150, 1],
    ])
    expect(stays[0]?.blocks.map(block => block.kind)).toEqual(['work', 'wait'])
  })

  test('are cut where a car is moved inside a hold; the second half belongs to no step that starts there', () => {
    const stays = drawn([work(0, 0), hold(1, 60, 300, { movedToBayId: 'two', movedAt: 120 })], 300)
    expect(
      stays.map(({ bay, position, blocks }) => [bay, position, blocks.at(-1)?.fromAt, blocks.at(-1)?.toAt]),
    ).toEqual([
      ['one', 0, 60, 120],
      ['two', null, 120, 300],
    ])
  })

  test('of a cure carry the coat they follow, the wait after it too; work carries none', () => {
    const [stay] = drawn([laid(0, 60), hold(1, 60, 420), work(2, 500)], 560)
    expect(stay?.blocks.map(({ kind, cure }) => [kind, cure?.coatEndAt ?? null])).toEqual([
      ['work', null],
      ['hold', 60],
      ['wait', 60],
      ['work', null],
    ])
  })
})

describe('how far a step is', () => {
  const done = work(0, 0, { actualStartAt: 0, actualEndAt: 60 })
  test.each([
    ['work not begun', work(0, 0), [], 30, 'planned'],
    ['work begun', work(0, 0, { actualStartAt: 0 }), [], 30, 'running'],
    ['work finished', done, [], 90, 'done'],
    ['a hold whose work is not done', hold(1, 60, 120), [work(0, 0)], 90, 'planned'],
    ['a hold before its time', hold(1, 60, 120), [done], 59, 'planned'],
    ['a hold in its time', hold(1, 60, 120), [done], 60, 'running'],
    ['a hold to its last minute', hold(1, 60, 120), [done], 119, 'running'],
    ['a hold that is over', hold(1, 60, 120), [done], 120, 'done'],
  ])('%s', (_, step, before, nowAt, state) => expect(stateOf(step, before, nowAt)).toBe(state))
})
