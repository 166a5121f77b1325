import { expect, test } from 'vitest'
import { valueAt } from '../../../main/domain/schedule/pieces.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { search } from '../../../main/domain/schedule/search.ts'
import { at, example } from './example.ts'

// The table of the worked example in main/domain/schedule/README.md, worked out there by hand.
test('The coat starts where the table says, each start with its latest drop-off', () => {
  const { layers, score, complete } = search(prepare(example), { lo: at(8), hi: at(48), dropOff: 'latest' })
  expect(complete).toBe(true)
  const gaps = layers[1]?.gaps ?? []
  expect(gaps.map(({ bay, span }) => [bay.id, span.from])).toEqual([
    ['clean', at(11)],
    ['clean', at(18)],
  ])
  const openMinutes = (gap: number, k: number) => {
    const piece = gaps[gap]?.pieces.find(({ from, to }) => from <= k && k <= to)
    return piece && score.openBeforeDropOff(valueAt(piece, k))
  }
  expect([openMinutes(0, 43), openMinutes(0, 44), openMinutes(0, 58), openMinutes(0, 59)]).toEqual([
    undefined,
    120,
    330,
    undefined,
  ])
  expect([openMinutes(1, 128), openMinutes(1, 131), openMinutes(1, 132), openMinutes(1, 133)]).toEqual([
    540, 540, 600, 615,
  ])
})

test('Where a step has no place the search ends there', () => {
  const closed = { ...example, fixed: [{ bay: 'clean', from: 0, to: at(48) }] }
  const { layers, complete } = search(prepare(closed), { lo: at(8), hi: at(48), dropOff: 'latest' })
  expect([layers.length, complete]).toEqual([1, false])
})
