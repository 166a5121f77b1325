import { expect, it } from 'vitest'
import { workOf } from '../../../main/services/effort/finished.ts'

const step = (stage: string, minutes: number, kind = 'work') => ({ stage, minutes, kind })

it('tells how much of the work is correction, without holds and laying, and how much of the paint', () => {
  const steps = [
    step('rinse', 30),
    step('correct', 90),
    step('correct', 60),
    step('wipe', 20),
    step('coat', 200),
    step('coat', 720, 'hold'),
  ]
  expect(workOf(steps, [{ share: 0.4 }, { share: 0.25 }])).toEqual({ share: 0.4, correction: 0.75 })
  expect(workOf([step('coat', 60)], [{ share: 1 }])).toEqual({ share: 1, correction: 0 })
  expect(workOf([step('rinse', 30)], []).share).toBe(1)
})
