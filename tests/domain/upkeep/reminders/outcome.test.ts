import { describe, expect, it } from 'vitest'
import { afterOutcome } from '../../../../main/domain/upkeep/reminders/outcome.ts'

const rules = { maxTries: 3, againDays: 7, laterDays: 30 }

describe('what follows an answer', () => {
  it.each([
    ['booked', 1, null, { next: 'wait-for-visit' }],
    ['booked', 3, null, { next: 'wait-for-visit' }],
    ['sold', 1, null, { next: 'stop', scope: 'car', because: 'sold' }],
    ['no', 1, null, { next: 'stop', scope: 'visit', because: 'said-no' }],
    ['unreachable', 1, null, { next: 'try', tryNo: 2, on: '2026-04-22' }],
    ['unreachable', 3, null, { next: 'stop', scope: 'visit', because: 'tries-used' }],
    ['later', 1, null, { next: 'try', tryNo: 2, on: '2026-05-15' }],
    ['later', 2, '2026-06-01', { next: 'try', tryNo: 3, on: '2026-06-01' }],
    ['later', 2, '2026-04-01', { next: 'try', tryNo: 3, on: '2026-04-16' }],
    ['later', 3, '2026-06-01', { next: 'stop', scope: 'visit', because: 'tries-used' }],
  ] as const)('%s at try %d, later on %s', (outcome, tryNo, laterOn, step) => {
    expect(afterOutcome(outcome, tryNo, '2026-04-15', rules, laterOn)).toEqual(step)
  })
})
