import { expect, test } from 'vitest'
import { promise } from '../../../main/domain/schedule/index.ts'
import { at, example } from './example.ts'

test('The worked example comes out as it is written', () => {
  const { soonest, leastBlocked, askedDay } = promise(example)
  const evening = { dropOff: at(17), handover: at(24 + 13, 30), blockedOpen: 240, moves: 1 }
  expect(soonest).toMatchObject(evening)
  expect(leastBlocked).toMatchObject(evening)
  expect(askedDay).toMatchObject({ dropOff: at(8), handover: at(24 + 13, 30), blockedOpen: 780 })
})
