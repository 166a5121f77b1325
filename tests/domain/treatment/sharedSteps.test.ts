import { expect, test } from 'vitest'
import { sharedSteps } from '../../../main/domain/treatment/index.ts'
import { step, treatment } from './samples.ts'

test('A wash two treatments share belongs to both; what is done for one alone belongs to that one', () => {
  const wash = step({ name: 'Wash', minutes: 45, needs: 'wet' })
  const steps = sharedSteps(
    [treatment(wash), treatment(wash, step({ name: 'Polish', stage: 'correct', minutes: 120 }))],
    'medium',
  )
  expect(steps.map(each => [each.name, [...each.minutesIn]])).toEqual([
    [
      'Wash',
      [
        [0, 45],
        [1, 45],
      ],
    ],
    ['Polish', [[1, 120]]],
  ])
})
