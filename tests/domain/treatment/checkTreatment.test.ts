import { expect, test } from 'vitest'
import { checkTreatment, type StepTemplate } from '../../../main/domain/treatment/index.ts'
import { coating, step, topper, treatment } from './samples.ts'

const shop = {
  gridMin: 15,
  handoverRule: 'minimum' as const,
  conditionFactors: { good: 1, worn: 1.25, heavy: 1.5 },
}
const recoat = { minMin: 60, maxMin: 240 }
const products = new Map([
  ['one', coating()],
  ['two', coating({ recoat, missedRecoat: 'Abrade.' })],
  ['veil', topper()],
])
const coat = (change: Parameters<typeof step>[0] = {}) =>
  step({ name: 'Layer', stage: 'coat', productId: 'two', ...change })

const refusals: [string, string, string, StepTemplate[]][] = [
  ['no steps', 'steps', 'steps-missing', []],
  ['a step without a name', 'steps.0.name', 'text-missing', [step({ name: ' ' })]],
  ['a negative duration', 'steps.0.minutes.small', 'duration-bad', [step({ minutes: -5 })]],
  ['a broken minute', 'steps.1.minutes.small', 'duration-bad', [step(), step({ minutes: 7.5 })]],
  ['a step that takes no time at all', 'steps.0.minutes.small', 'duration-bad', [step({ minutes: 0 })]],
  ['nobody for work that takes a skill', 'steps.0.crew', 'crew-bad', [step({ skill: 'wash', crew: 0 })]],
  ['a negative wait', 'steps.1.waitMin', 'duration-bad', [step(), step({ waitMin: -1 })]],
  [
    'a wait below its own minimum',
    'steps.1.waitMax',
    'waits-contradict',
    [step(), step({ waitMin: 60, waitMax: 30 })],
  ],
  ['an unknown product', 'steps.0.productId', 'product-unknown', [step({ productId: 'gone' })]],
  ['stages out of order', 'steps.1.stage', 'stage-order', [coat(), step()]],
  ['a coat that pauses at closing', 'steps.0.splittable', 'coat-split', [coat({ splittable: true })]],
  [
    'a second layer no sheet names',
    'steps.1.productId',
    'no-second-layer',
    [coat({ productId: 'one' }), coat({ productId: 'one' })],
  ],
  [
    'a wait shorter than the recoat minimum',
    'steps.1.waitMax',
    'waits-contradict',
    [coat(), coat({ waitMax: 30 })],
  ],
  [
    'a wait longer than the recoat maximum',
    'steps.1.waitMin',
    'waits-contradict',
    [coat(), coat({ waitMin: 300 })],
  ],
  [
    'a topper due before its minimum',
    'steps.1.waitMax',
    'waits-contradict',
    [coat(), step({ name: 'Topper', stage: 'topper', productId: 'veil', waitMax: 60 })],
  ],
]

test.each(refusals)('Refuses %s and names the field', (_, field, code, steps) => {
  expect(() => checkTreatment(treatment(...steps), products, shop)).toThrow(
    expect.objectContaining({ name: 'Refusal', field, code }),
  )
})

test('Accepts two layers and a topper', () => {
  const sound = treatment(
    step(),
    coat(),
    coat({ waitMin: 90, waitMax: 200 }),
    step({ stage: 'topper', productId: 'veil' }),
  )
  expect(() => checkTreatment(sound, products, shop)).not.toThrow()
})
