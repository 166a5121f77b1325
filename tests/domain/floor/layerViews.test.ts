import { expect, test } from 'vitest'
import { type FloorStep, layerViews } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'
import { laid, products, work } from './sampleJob.ts'

const views = (nowAt: number, ...steps: FloorStep[]) =>
  layerViews(
    steps,
    products,
    { conditions: new Map([[1, 'cold']]), air: new Map([[1, ['damp']]]) },
    nowAt,
    'metric',
  )
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

// The sheet's recoat window: 60 to 240 minutes for each panel; both layers take 60 minutes.
test.each([
  [67, 'too early', sheetProfile.missedRecoat],
  [68, 'met', null],
  [240, 'met', null],
  [241, 'too late', sheetProfile.missedRecoat],
])('A second layer begun at %i on one finished at 60: %s', (begunAt, verdict, asks) => {
  const [first, over] = views(1000, laid(0, 60), second(begunAt, { actualStartAt: begunAt }))
  expect(first).toMatchObject({ window: null, verdict: null })
  expect(over).toMatchObject({ window: { opensAt: 68, closesAt: 240 }, verdict, asks })
})

test('A layer not begun is judged as if it were begun now, at the earliest when its window opens', () => {
  expect(views(0, laid(0, 60), second(200))[1]?.verdict).toBe('met')
  expect(views(241, laid(0, 60), second(200))[1]?.verdict).toBe('too late')
})

// The sheet's topper window: 60 to 120 minutes for each panel.
test.each([
  [67, 'too early'],
  [68, 'met'],
  [120, 'met'],
  [121, 'too late'],
])('A topper begun at %i on a coat finished at 60: %s', (begunAt, verdict) => {
  const over = views(1000, laid(0, 60), veil(begunAt)).at(-1)
  expect(over).toMatchObject({ window: { opensAt: 68, closesAt: 120 }, verdict })
  expect(over?.asks === null).toBe(verdict !== 'too late')
})

test('A window that the cold closes before it opens says so, with what the sheet asks', () => {
  const over = views(0, laid(0, 60, {}, -20), second(200))[1]
  expect(over).toMatchObject({ verdict: 'closes before it opens', asks: sheetProfile.missedRecoat })
  expect(over?.why[1]).toMatch(/^Recoat window closes: 4 h on each panel at 20 °C/)
})

test('A layer carries what its early cure did not meet', () => {
  const [first, over] = views(0, laid(0, 60), second(200))
  expect([first?.air, over?.air]).toEqual([[], ['damp']])
})

test('Over a coat that is not laid yet no window is given', () => {
  const over = views(0, second(0), veil(200)).at(-1)
  expect(over).toMatchObject({ window: null, verdict: 'no window given' })
})
