import { expect, test } from 'vitest'
import type { Stage, TreatmentStep } from '../../../main/domain/shop/index.ts'
import { partOf, priceShare } from '../../../main/domain/treatment/index.ts'

test('what is done panel by panel takes its part of the time, the rest all of it', () => {
  const step = (stage: Stage) =>
    ({ stage, name: stage, minutes: { small: 0, medium: 101, large: 101, xl: 101 } }) as TreatmentStep
  const whole = { name: 'T', steps: [step('prepare'), step('correct'), step('coat'), step('finish')] }
  expect(partOf(whole, 1)).toBe(whole)
  expect(partOf(whole, 0.35).steps.map(({ minutes }) => [minutes.small, minutes.medium])).toEqual([
    [0, 101],
    [0, 36],
    [0, 36],
    [0, 101],
  ])
})

test('a price leaves whole what is done whole: steps weighed by their minutes', () => {
  const step = (stage: Stage, medium: number) =>
    ({ stage, name: stage, minutes: { small: 0, medium, large: medium, xl: medium } }) as TreatmentStep
  const treatment = { name: 'T', steps: [step('prepare', 60), step('correct', 240)] }
  // (60 + 0.35 × 240) of 300.
  expect(priceShare(treatment, 0.35, 'medium')).toBeCloseTo(0.48, 12)
  expect(priceShare(treatment, 1, 'medium')).toBe(1)
  expect(priceShare({ name: 'T', steps: [step('prepare', 60)] }, 0.35, 'medium')).toBe(1)
  // A size it takes no time for is priced by the paint alone.
  expect(priceShare(treatment, 0.35, 'small')).toBe(0.35)
})
