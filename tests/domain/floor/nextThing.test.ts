import { expect, test } from 'vitest'
import { type FloorStep, nextThing } from '../../../main/domain/floor/index.ts'
import { hold, laid, products, work } from './sampleJob.ts'

// The sheet: tack-free after 45 minutes, recoat 60 to 240, topper 60 to 120, handover 360; all take 60 minutes.
const next = (nowAt: number, ...steps: FloorStep[]) => {
  const thing = nextThing(steps, products, nowAt, 'covered')
  return thing && { what: thing.what, fromAt: thing.fromAt, untilAt: thing.untilAt }
}

test('A fresh coat may first be touched, then what follows it says what is next', () => {
  const coat = laid(0, 60)
  const layer = work(1, 200, { stage: 'coat', productId: 'coating' })
  const veil = work(1, 200, { stage: 'topper', productId: 'topper' })
  expect(next(104, coat, layer)).toEqual({ what: 'touch', fromAt: 105, untilAt: null })
  expect(next(105, coat, layer)).toEqual({ what: 'layer', fromAt: 68, untilAt: 240 })
  expect(next(105, coat, hold(1, 60, 120), { ...veil, position: 2 })).toEqual({
    what: 'topper',
    fromAt: 68,
    untilAt: 120,
  })
  expect(next(105, coat, hold(1, 60, 420))).toEqual({ what: 'leave', fromAt: 420, untilAt: null })
})

test('A car that must stay dry leaves when it may get wet', () => {
  expect(nextThing([laid(0, 60)], products, 500, 'dry')).toEqual({
    what: 'leave',
    fromAt: 60 + 1440,
    untilAt: null,
    leaving: 'dry',
  })
})

test('It goes by the coat laid last', () => {
  expect(next(250, laid(0, 60), laid(1, 240))?.fromAt).toBe(285)
})

test('Nothing is next while nothing is laid, or while hands are on the car', () => {
  expect(next(0, work(0, 0))).toBeNull()
  expect(next(210, laid(0, 60), work(1, 200, { stage: 'coat', actualStartAt: 200 }))).toBeNull()
  expect(next(300, laid(0, 60), work(1, 200, { actualStartAt: 200, actualEndAt: 260 }))?.what).toBe('leave')
})
