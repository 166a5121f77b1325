import { expect, test } from 'vitest'
import { clockedSteps } from '../../../main/services/floor/clockedSteps.ts'
import type { FloorStep } from '../../../main/services/floor/floorJobs.ts'

/** A coat finished at a minute whose clock runs at the reference: an age is reached so many minutes later. */
const coat = (endAt: number, handoverMin: number) => ({
  kind: 'work',
  stage: 'coat',
  actualStartAt: endAt - 60,
  actualEndAt: endAt,
  endAt,
  laid: {
    clock: { coatEndAt: endAt, reachedAt: (age: number) => endAt + age },
    profile: { handoverMin, topperMaxMin: null, recoat: null },
  },
})
const hold = {
  kind: 'hold',
  stage: 'cure',
  minutes: 240,
  startAt: 100,
  endAt: 340,
  actualStartAt: null,
  actualEndAt: null,
  moveAfterMin: null,
}
const minutes = (...steps: object[]) => clockedSteps(steps as FloorStep[]).at(-1)?.minutes

test('The hold the car goes home after waits for every coat, not only for the one it follows', () => {
  expect(minutes(coat(0, 200), coat(100, 240))).toBeUndefined()
  expect(minutes(coat(0, 200), coat(100, 240), hold)).toBe(240)
  // The first coat asks 600 minutes from its own end: 500 after the second.
  expect(minutes(coat(0, 600), coat(100, 240), hold)).toBe(500)
})
