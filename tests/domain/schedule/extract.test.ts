import { expect, test } from 'vitest'
import { extract } from '../../../main/domain/schedule/extract.ts'
import { bestFinish, soonestFirst } from '../../../main/domain/schedule/handovers.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { search } from '../../../main/domain/schedule/search.ts'
import type { Problem } from '../../../main/domain/schedule/types.ts'
import { at, example } from './example.ts'

function way(problem: Problem) {
  const reached = search(prepare(problem), { lo: problem.newJob.release, hi: at(48), dropOff: 'latest' })
  const finish = bestFinish(reached, soonestFirst)
  return finish && extract(reached, finish)
}

test('The way of the worked example is read back as it is told', () => {
  expect(way(example)).toEqual([
    { bay: 'wash', start: at(17), end: at(18) },
    { bay: 'clean', start: at(32), end: at(33, 30) },
    { bay: 'clean', start: at(33, 30), end: at(37, 30) },
  ])
})

test('A move inside a hold is read back with its minute and bay', () => {
  const fixed = [
    { bay: 'wash', from: at(10), to: at(48) },
    { bay: 'clean', from: at(8), to: at(9, 30) },
  ]
  const steps = [{ kind: 'hold', minutes: 240, moveAfter: 60 } as const]
  // In at 08:00, out of the wash bay by 10:00; the clean bay is free from 09:30.
  expect(way({ ...example, fixed, newJob: { ...example.newJob, steps } })?.[0]).toMatchObject({
    start: at(8),
    end: at(12),
    moved: { at: at(9, 30), bay: 'clean' },
  })
})
