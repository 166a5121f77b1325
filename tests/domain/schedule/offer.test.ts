import { expect, test } from 'vitest'
import { bestFinish, soonestFirst } from '../../../main/domain/schedule/handovers.ts'
import { offerOf } from '../../../main/domain/schedule/offer.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { search } from '../../../main/domain/schedule/search.ts'
import { at, example } from './example.ts'

test('The offer names people, stays and cost of the worked example', () => {
  const reached = search(prepare(example), { lo: at(8), hi: at(48), dropOff: 'latest' })
  const finish = bestFinish(reached, soonestFirst)
  if (!finish) throw new Error('The example has an answer')
  const offer = offerOf('soonest', reached, finish)
  expect(offer).toMatchObject({ kind: 'soonest', dropOff: at(17), blockedOpen: 240, moves: 1, closedCure: 0 })
  expect(offer.plan.steps.map(({ crew }) => crew)).toEqual([['Jo'], ['Jo'], []])
  expect(offer.stays).toEqual([
    { bay: 'wash', from: at(17), to: at(32) },
    { bay: 'clean', from: at(32), to: at(37, 30) },
  ])
})
