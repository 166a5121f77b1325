import { expect, test } from 'vitest'
import { clockedSteps } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'
import { hold, laid, work } from './sampleJob.ts'

/** A coat finished at a minute in 20 °C, whose profile lets the car go home so many minutes later. */
const coat = (endAt: number, handoverMin = 360) => {
  const step = laid(0, endAt)
  return { ...step, laid: { ...step.laid, profile: { ...sheetProfile, handoverMin } } }
}
const cold = laid(0, 100, {}, 10)

test('The hold the car goes home after waits for every coat, not only for the one it follows', () => {
  const cure = hold(2, 100, 340)
  expect(clockedSteps([coat(0, 200), coat(100, 240), cure]).at(-1)?.minutes).toBe(240)
  // The first coat asks 600 minutes from its own end: 500 after the second.
  expect(clockedSteps([coat(0, 600), coat(100, 240), cure]).at(-1)?.minutes).toBe(500)
  // Where work follows the hold, it is not the one the car goes home after.
  expect(clockedSteps([coat(0, 600), coat(100, 240), cure, work(3, 340)])[2]?.minutes).toBe(240)
})

// Ten degrees under the reference, by the doubling rule: each age takes twice as long.
test('A hold in the cold lasts until the age is reached, and the car may be moved later', () => {
  const [, cure] = clockedSteps([cold, hold(1, 100, 200, { moveAfterMin: 45 }), work(2, 200)])
  expect(cure).toMatchObject({ minutes: 200, moveAfterMin: 90 })
})

test('A hold after other work has that much of its age already', () => {
  const steps = [cold, work(1, 100, { minutes: 60 }), hold(2, 160, 220), work(3, 220)]
  // 120 minutes of age are reached at 340, and it begins at 160.
  expect(clockedSteps(steps)[2]?.minutes).toBe(180)
})

test('A window closes when the clock says so; one the profile does not close stays', () => {
  const next = (stage: string, waitMax: number) =>
    clockedSteps([cold, work(1, 160, { stage, waitMin: 60, waitMax })])[1]?.waitMax
  // Sixty minutes of age before it, and the sheet closes the recoat window at an age of 240.
  expect(next('coat', 180)).toBe(480)
  expect(next('coat', 181)).toBe(181)
  expect(next('topper', 60)).toBe(240)
  expect(next('prepare', 60)).toBe(60)
})

test('What has begun, what follows no coat and what follows one still to come keep their times', () => {
  const begun = hold(1, 100, 200, { actualStartAt: 100 })
  expect(clockedSteps([cold, begun, work(2, 200)])[1]).toEqual(begun)
  const before = hold(0, 0, 40)
  expect(clockedSteps([before, { ...cold, position: 1 }])[0]).toEqual(before)
  const steps = [cold, work(1, 200, { stage: 'coat', productId: 'coating' }), hold(2, 260, 360), work(3, 360)]
  expect(clockedSteps(steps)[2]).toEqual(steps[2])
  const planned = [work(0, 0, { stage: 'coat' }), hold(1, 60, 100)]
  expect(clockedSteps(planned)).toEqual(planned)
})
