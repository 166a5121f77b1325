import { expect, test } from 'vitest'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { dropOffPieces, scoreOf } from '../../../main/domain/schedule/score.ts'
import { example } from './example.ts'

const prepared = prepare(example)

test('The latest drop-off counts opening minutes, and a closing minute loses to the next opening', () => {
  const score = scoreOf(prepared, true)
  // 17:30 to 18:00 and the next day's 08:00: 570, 585, then 600 twice.
  const runs = [
    { from: 70, to: 72, length: 60 },
    { from: 128, to: 128, length: 60 },
  ]
  const pieces = dropOffPieces(prepared, score, runs, 200)
  expect(pieces.map(({ from, to }) => [from, to])).toEqual([
    [70, 71],
    [72, 72],
    [128, 128],
  ])
  expect(pieces.map(({ value }) => score.openBeforeDropOff(value))).toEqual([570, 600, 600])
  expect(pieces[0]?.slope).toBe(15 * score.minute)
  expect(pieces[1]?.value).toBeLessThan(pieces[2]?.value ?? 0)
})

test('The earliest drop-off is worth a minute less every minute, up to the last that is asked for', () => {
  const score = scoreOf(prepared, false)
  const [piece, ...more] = dropOffPieces(prepared, score, [{ from: 32, to: 68, length: 60 }], 40)
  expect(more).toEqual([])
  expect(piece).toMatchObject({ from: 32, to: 40, slope: -15 * score.minute })
})

test('A move costs more than any bay, and a minute more than all moves', () => {
  const { newJob } = example
  const score = scoreOf(prepare({ ...example, newJob: { ...newJob, preferBays: ['clean'] } }), true)
  expect([score.unlikedBay(0, 'wash'), score.unlikedBay(0, 'clean')]).toEqual([1, 0])
  expect(score.move).toBeGreaterThan(newJob.steps.length)
  expect(score.minute).toBeGreaterThan(2 * newJob.steps.length * score.move)
})
