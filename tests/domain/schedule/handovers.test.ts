import { expect, test } from 'vitest'
import {
  bestFinish,
  blockedOf,
  earliestDropOffFirst,
  leastBlockedFirst,
  soonestFirst,
} from '../../../main/domain/schedule/handovers.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { search } from '../../../main/domain/schedule/search.ts'
import { at, example } from './example.ts'

const reached = search(prepare(example), { lo: at(8), hi: at(48), dropOff: 'latest' })

test('The worked example goes home at 13:30 on the second day, four hours blocked', () => {
  for (const better of [soonestFirst, leastBlockedFirst(reached)]) {
    const finish = bestFinish(reached, better)
    expect(finish?.handover).toBe(at(24 + 13, 30))
    expect(finish && blockedOf(reached, finish)).toBe(240)
  }
})

test('A car that is ready at night goes home when the doors open', () => {
  const steps = [{ kind: 'hold', minutes: 600 } as const]
  const problem = { ...example, fixed: [], newJob: { ...example.newJob, release: at(10), steps } }
  const overnight = search(prepare(problem), { lo: at(10), hi: at(48), dropOff: 'latest' })
  const finish = bestFinish(overnight, soonestFirst)
  // The latest drop-off that is ready by the morning is the closing minute before it.
  expect(finish && [finish.handover, overnight.score.openBeforeDropOff(finish.value)]).toEqual([at(32), 600])
})

test('The asked day takes the earliest drop-off first', () => {
  const early = search(prepare(example), { lo: at(8), hi: at(48), dropOff: 'earliest' })
  expect(bestFinish(early, earliestDropOffFirst(early))?.handover).toBe(at(24 + 13, 30))
})

test('Nothing finishes where a step has no place', () => {
  expect(bestFinish({ ...reached, complete: false }, soonestFirst)).toBeUndefined()
})
