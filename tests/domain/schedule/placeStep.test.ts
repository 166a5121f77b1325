import { expect, test } from 'vitest'
import { placeStep } from '../../../main/domain/schedule/placeStep.ts'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { scoreOf } from '../../../main/domain/schedule/score.ts'
import { startsOf } from '../../../main/domain/schedule/starts.ts'
import { stepAt } from '../../../main/domain/schedule/steps.ts'
import { at, example } from './example.ts'

const prepared = prepare(example)
const score = scoreOf(prepared, true)
const step = stepAt(example, 1)
const placing = { prepared, score, step, index: 1, starts: startsOf(prepared, step, at(8), at(48)) }
const coming = { from: 40, to: 62, value: 100, slope: 0, length: 90 }
const clean = prepared.bays[1]

test('A coat of 90 minutes fits the afternoon from 11:00, and must end when the bay is taken again', () => {
  const { gaps } = placeStep(placing, { coming: [coming], staying: [] })
  expect(gaps.map(({ bay, pieces }) => [bay.id, pieces])).toEqual([
    ['clean', [{ ...coming, from: 44, to: 58 }]],
  ])
})

test('A car that stays is taken where it is the better one', () => {
  const [span] = clean?.free ?? []
  if (!clean || !span) throw new Error('The example has a clean bay with free time')
  const there = { from: 50, to: 64, value: 200, slope: 0, length: 0 }
  const { gaps } = placeStep(placing, { coming: [coming], staying: [{ bay: clean, span, pieces: [there] }] })
  expect(gaps[0]?.pieces.map(({ from, to, value }) => [from, to, value])).toEqual([
    [44, 49, 100],
    [50, 58, 200],
  ])
})
