import { expect, test } from 'vitest'
import { clockedSteps as clocked, type FloorStep } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'
import { hold, laid, work } from './sampleJob.ts'

const clockedSteps = (steps: readonly FloorStep[]) => clocked(steps, 'covered')

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

// The sheet's windows: recoat 60 to 240 minutes, topper 60 to 120; both layers take 60 minutes.
test('A window opens later in the cold and closes no later', () => {
  const next = (stage: string, waitMax: number) => {
    const said = { stage, productId: stage === 'coat' ? 'coating' : 'topper', waitMin: 0, waitMax }
    const step = clockedSteps([cold, work(1, 160, said)])[1]
    return [step?.waitMin, step?.waitMax]
  }
  // By the doubling rule the last panel is ripe 120 minutes after its end; its turn comes 52 into the next layer.
  expect(next('coat', 180)).toEqual([68, 180])
  expect(next('coat', 100)).toEqual([68, 100])
  expect(next('topper', 60)).toEqual([68, 60])
  expect(next('prepare', 60)).toEqual([0, 60])
})

test('A window closes sooner in the heat, and opens no sooner', () => {
  const hot = laid(0, 100, {}, 30)
  const said = { stage: 'coat', productId: 'coating', waitMin: 0, waitMax: 180 }
  // The first panel, done at 40, is over 120 minutes later; the last at 220, 60 into the next layer.
  expect(clockedSteps([hot, work(1, 160, said)])[1]).toMatchObject({ waitMin: 8, waitMax: 60 })
})

test('A hold before the next layer ends when the window is open for every panel', () => {
  const steps = [cold, hold(1, 100, 115), work(2, 115, { stage: 'coat', productId: 'coating', waitMax: 165 })]
  const [, cure, next] = clockedSteps(steps)
  expect(cure?.minutes).toBe(68)
  // Nothing is left of the wait that the hold, now longer, takes: 280 less the 115 it was planned to end at.
  expect(next?.waitMax).toBe(165)
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

test('A car that is not covered is held until the last of its coats may get wet', () => {
  // The sheet: handover after 360 minutes, dry for 1440.
  const steps = [laid(0, 100), hold(1, 100, 460)]
  expect(clocked(steps, 'covered').at(-1)?.minutes).toBe(360)
  expect(clocked(steps, 'dry').at(-1)?.minutes).toBe(1440)
})
