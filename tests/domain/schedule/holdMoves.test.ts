import { expect, test } from 'vitest'
import { holdMoves, moveRange } from '../../../main/domain/schedule/holdMoves.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { scoreOf } from '../../../main/domain/schedule/score.ts'
import type { Hold } from '../../../main/domain/schedule/types.ts'
import { example } from './example.ts'

const prepared = prepare(example)
const score = scoreOf(prepared, true)
const hold: Hold = { kind: 'hold', minutes: 240, moveAfter: 60 }

test('A car may be moved from tack-free to just before the hold ends', () => {
  expect(moveRange(prepared, hold)).toEqual({ from: 4, to: 15 })
})

/** Where a hold that starts in the wash bay at a grid point can end, and what the way there is worth. */
function ends(k: number) {
  const [wash] = prepared.bays
  const [span] = wash?.free ?? []
  if (!wash || !span) throw new Error('The example has a wash bay with free time')
  const pieces = [{ from: k, to: k, value: 1000, slope: 0, length: 240 }]
  const layer = { step: 0, afterMove: false, gaps: [{ bay: wash, span, pieces }] }
  const after = holdMoves(prepared, score, layer, hold)
  return after.gaps.map(({ bay, pieces: [piece] }) => [bay.id, piece?.from, piece?.value])
}

test('It ends where it began, or in a bay that is free by then at the price of a move', () => {
  // From 08:00 to 12:00: the clean bay is free from 11:00.
  expect(ends(32)).toEqual([
    ['wash', 32, 1000],
    ['clean', 32, 1000 - score.move],
  ])
  // From 13:00 to 17:00 the clean bay is taken before it ends.
  expect(ends(52)).toEqual([['wash', 52, 1000]])
})

test('Nobody moves it through shut doors', () => {
  // From 17:30 to 21:30: tack-free at 18:30, when the shop is closed.
  expect(ends(70)).toEqual([['wash', 70, 1000]])
})
