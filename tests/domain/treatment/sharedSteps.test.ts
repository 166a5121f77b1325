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

test('What treatments ask for alike around the work is done once: dried, tried on a spot, rinsed; what corrects is not', () => {
  const around = [
    step({ name: 'Wash', needs: 'wet' }),
    step({ name: 'Dry and blow out', stage: 'dry', needs: 'wet', minutes: 15 }),
    step({ name: 'Test spot', stage: 'test', needs: 'polish', minutes: 45 }),
    step({ name: 'Refine', stage: 'correct', needs: 'polish', minutes: 120 }),
    step({ name: 'Wash residue off and dry', stage: 'rinse', needs: 'wet', minutes: 20 }),
    step({ name: 'Wipe', stage: 'wipe', minutes: 30 }),
    step({ name: 'Check', stage: 'finish', minutes: 15 }),
  ]
  const names = sharedSteps([treatment(...around), treatment(...around)], 'medium').map(each => each.name)
  expect(names).toEqual([
    'Wash',
    'Dry and blow out',
    'Test spot',
    'Refine',
    'Refine',
    'Wash residue off and dry',
    'Wipe',
    'Check',
  ])
})
