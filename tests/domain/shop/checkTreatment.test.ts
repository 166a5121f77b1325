import fc from 'fast-check'
import { expect, test } from 'vitest'
import { commonPracticeProfile } from '../../../main/domain/cure/index.ts'
import { Refusal } from '../../../main/domain/refusal.ts'
import { checkTreatment, type TreatmentStep } from '../../../main/domain/shop/index.ts'
import { sizes, washStep } from './washStep.ts'

const products = [
  { id: 'coat', name: 'Ovrel One', kind: 'coating' as const, cureProfile: commonPracticeProfile() },
  { id: 'foam', name: 'Foam', kind: 'wash' as const, cureProfile: null },
]
const step: TreatmentStep = { ...washStep, productId: 'foam' }
const check = (steps: TreatmentStep[], longestOpeningMin = 600) =>
  checkTreatment({ name: 'Wash', prices: sizes(0), steps }, products, longestOpeningMin)

test('a step as long as the longest opening fits; a minute longer must be able to pause', () => {
  expect(() => check([{ ...step, minutes: sizes(600) }])).not.toThrow()
  expect(() => check([{ ...step, minutes: { ...sizes(600), large: 601 } }])).toThrow(
    expect.objectContaining({ code: 'step-too-long', field: 'steps.0.minutes.large' }),
  )
  expect(() => check([{ ...step, minutes: sizes(601), splittable: true }])).not.toThrow()
})

test('a step left out for one size is fine, for all it is not', () => {
  expect(() => check([{ ...step, minutes: { ...sizes(60), small: 0 } }])).not.toThrow()
  expect(() => check([{ ...step, minutes: sizes(0) }])).toThrow(
    expect.objectContaining({ code: 'duration-bad' }),
  )
})

test('a wash product cannot be coated with, and a coating not be washed with', () => {
  expect(() => check([{ ...step, stage: 'coat' }])).toThrow(
    expect.objectContaining({ code: 'product-missing', field: 'steps.0.productId' }),
  )
  expect(() => check([{ ...step, productId: 'coat' }])).toThrow(
    expect.objectContaining({ code: 'product-misplaced', field: 'steps.0.productId' }),
  )
})

test('whatever numbers are typed, the answer is a pass or a refusal that names a field of the step', () => {
  const number = fc.oneof(fc.integer(), fc.double(), fc.constant(60))
  const wait = fc.oneof(number, fc.constant(null))
  fc.assert(
    fc.property(number, number, wait, wait, (minutes, crew, waitMin, waitMax) => {
      const odd = { ...step, minutes: sizes(minutes), crew, waitMin, waitMax }
      try {
        check([step, odd])
        expect(Number.isInteger(minutes) && minutes > 0 && minutes <= 600).toBe(true)
        expect(crew).toBeOneOf([1, 2, 3, 4, 5, 6])
        if (waitMin !== null && waitMax !== null) expect(waitMin).toBeLessThanOrEqual(waitMax)
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
        expect(error.field).toMatch(/^steps\.1\.(minutes\.(small|medium)|crew|waitMin|waitMax)$/)
      }
    }),
  )
})

test('a limit to the next step says what a missed one costs, and nothing is laid again on what is too old', () => {
  const faults = (change: Partial<TreatmentStep>) => {
    try {
      check([{ ...step, ...change }])
      return null
    } catch (error) {
      return (error as Refusal).code
    }
  }
  expect(faults({ nextWithinMin: 45 })).toBe('missed-unsaid')
  expect(faults({ nextWithinMin: -1, missed: 'again' })).toBe('wait-bad')
  expect(faults({ nextWithinMin: 45, missed: 'again' })).toBeNull()
  expect(faults({ missed: 'abrade', missedMin: 0 })).toBe('duration-bad')
  expect(faults({ missed: 'abrade', missedMin: 30 })).toBeNull()
  const coat = { stage: 'coat', productId: 'coat' } as const
  expect(faults({ ...coat, missed: 'again' })).toBe('missed-bad')
  expect(faults({ ...coat, missed: 'redo', missedMin: 60 })).toBeNull()
})
