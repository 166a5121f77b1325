import { describe, expect, test } from 'vitest'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Offer, Problem, Step, Work } from '../../../main/domain/schedule/types.ts'

const step: Work = { kind: 'work', minutes: 60, needs: null, skill: 'wash', crew: 1, split: false }

function shop(steps: readonly Step[], preferBays?: string[]): Problem {
  return {
    grid: 15,
    horizon: 1440,
    open: [{ from: 480, to: 1080 }],
    bays: ['A', 'B', 'C'].map(id => ({ id, can: [], closed: [] })),
    crew: ['p', 'q', 'r'].map(id => ({ id, skills: ['wash'], away: [] })),
    fixed: [{ bay: 'B', from: 480, to: 510 }],
    newJob: { id: 'new', release: 0, asked: 0, steps, preferBays },
  }
}

const first = (problem: Problem) => (promise(problem).soonest as Offer).plan.steps[0]!

describe('preferences', () => {
  test('choose among equal bays', () => {
    expect(first(shop([step], ['C'])).bay).toBe('C')
    expect(first(shop([step], ['A'])).bay).toBe('A')
    expect(first(shop([{ ...step, preferBays: ['C'] }], ['A'])).bay).toBe('C')
  })

  test('never cost a minute', () => {
    const { bay, start } = first(shop([step], ['B']))
    expect([bay, start]).not.toContain('B')
    expect(start).toBe(480)
  })

  test('never cost a move', () => {
    const problem = shop([
      { ...step, bays: ['A', 'C'], preferBays: ['C'] },
      { ...step, bays: ['A'] },
    ])
    expect((promise(problem).soonest as Offer).moves).toBe(0)
  })

  test('choose among free people, who then stay with the car', () => {
    const problem = shop([{ ...step, preferCrew: ['r'] }, step])
    const { plan } = promise(problem).soonest as Offer
    expect(plan.steps.map(({ crew }) => crew)).toEqual([['r'], ['r']])
  })
})
