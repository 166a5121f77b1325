import { expect, test } from 'vitest'
import { type FloorStep, layerViews } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'
import { laid, products, work } from './sampleJob.ts'

const views = (nowAt: number, ...steps: FloorStep[]) =>
  layerViews(steps, products, new Map([[1, 'cold']]), nowAt)
const second = (startAt: number, said: Partial<FloorStep> = {}) =>
  work(1, startAt, { stage: 'coat', productId: 'coating', ...said })
const veil = (startAt: number) =>
  work(2, startAt, { stage: 'topper', productId: 'topper', actualStartAt: startAt })

test('Layers are coats and toppers with a profile, each with what was noted of its air', () => {
  const steps = [laid(0, 60), second(200), work(2, 300, { stage: 'coat', productId: 'wash' }), work(3, 400)]
  expect(
    views(0, ...steps).map(({ position, productName, laid, conditions }) => [
      position,
      productName,
      laid,
      conditions,
    ]),
  ).toEqual([
    [0, 'Bergglas Two', true, null],
    [1, 'Bergglas Two', false, 'cold'],
  ])
})

// The sheet's recoat window: 60 to 240 minutes after the coat.
test.each([
  [119, 'too early', sheetProfile.missedRecoat],
  [120, 'met', null],
  [300, 'met', null],
  [301, 'too late', sheetProfile.missedRecoat],
])('A second layer begun at %i on one finished at 60: %s', (begunAt, verdict, asks) => {
  const [first, over] = views(1000, laid(0, 60), second(begunAt, { actualStartAt: begunAt }))
  expect(first).toMatchObject({ window: null, verdict: null })
  expect(over).toMatchObject({ window: { opensAt: 120, closesAt: 300 }, verdict, asks })
})

test('A layer not begun is judged as if it were begun now, at the earliest when its window opens', () => {
  expect(views(0, laid(0, 60), second(200))[1]?.verdict).toBe('met')
  expect(views(301, laid(0, 60), second(200))[1]?.verdict).toBe('too late')
})

// The sheet's topper window: 60 to 120 minutes.
test.each([
  [119, 'too early'],
  [120, 'met'],
  [180, 'met'],
  [181, 'too late'],
])('A topper begun at %i on a coat finished at 60: %s', (begunAt, verdict) => {
  const over = views(1000, laid(0, 60), veil(begunAt)).at(-1)
  expect(over).toMatchObject({ window: { opensAt: 120, closesAt: 180 }, verdict })
  expect(over?.asks === null).toBe(verdict !== 'too late')
})

test('Over a coat that is not laid yet no window is given', () => {
  const over = views(0, second(0), veil(200)).at(-1)
  expect(over).toMatchObject({ window: null, verdict: 'no window given' })
})
