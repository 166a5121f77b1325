import { expect, test } from 'vitest'
import { lastHoldMin } from '../../../main/domain/floor/index.ts'
import { coating, hold, products, work } from './sampleJob.ts'

const coat = work(0, 0, { stage: 'coat', productId: 'coating' })
const rule = { leaving: 'covered', rule: 'minimum', gridMin: 15 } as const

// The sheet: handover after 360 minutes, advised 720, dry for 1440.
test('The hold a job ends with is as long as the handover figure asks, or until the car may get wet', () => {
  const steps = [coat, hold(1, 60, 420)]
  expect(lastHoldMin(steps, products, rule)).toBe(360)
  expect(lastHoldMin(steps, products, { ...rule, rule: 'advised' })).toBe(720)
  expect(lastHoldMin(steps, products, { ...rule, leaving: 'dry' })).toBe(1440)
})

test('What has surely passed since the coat is not held again', () => {
  const look = work(2, 160, { endAt: 190, waitMin: 5 })
  const steps = [coat, hold(1, 60, 160), look, hold(3, 190, 420)]
  // 360 less 100, 30 and 5, up to the grid.
  expect(lastHoldMin(steps, products, rule)).toBe(225)
  expect(lastHoldMin([coat, hold(1, 60, 800), look, hold(3, 830, 845)], products, rule)).toBe(15)
})

test('It waits for every coat: one laid long before may need longer than the last', () => {
  const quick = { ...coating, cureProfile: { ...coating.cureProfile!, handoverMin: 60 } }
  const both = new Map([...products, ['quick', quick]])
  const second = (productId: string) => work(2, 160, { endAt: 190, stage: 'coat', productId })
  const steps = (productId: string) => [coat, hold(1, 60, 160), second(productId), hold(3, 190, 420)]
  // The first coat asks 360 less the hold of 100 and the coating of 30, the second its own 60.
  expect(lastHoldMin(steps('quick'), both, rule)).toBe(240)
  // Of two alike the last one is the later.
  expect(lastHoldMin(steps('coating'), both, rule)).toBe(360)
})

test('A chain that does not end with a hold, or lays nothing, has none', () => {
  expect(lastHoldMin([coat], products, rule)).toBeNull()
  expect(lastHoldMin([work(0, 0), hold(1, 60, 120)], products, rule)).toBeNull()
})
