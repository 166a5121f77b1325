import { expect, test } from 'vitest'
import type { Stage, TreatmentStep } from '../../../main/domain/shop/index.ts'
import { partOf } from '../../../main/domain/treatment/index.ts'

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
