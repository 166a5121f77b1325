import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type LeftStep, minutesWithout } from '../../../main/domain/job/leaveOut.ts'

const step = (part: Partial<LeftStep> = {}): LeftStep => ({
  kind: 'work',
  stage: 'correct',
  minutes: 240,
  actualStartAt: null,
  shares: [{ before: 1, after: 0.75 }],
  ...part,
})

it('shortens what is done panel by panel and has not begun, up to the grid', () => {
  const steps = [
    step(),
    step({ minutes: 60 }),
    step({ stage: 'rinse' }),
    step({ kind: 'hold', stage: 'coat' }),
    step({ actualStartAt: 5 }),
    step({ shares: [] }),
    step({
      shares: [
        { before: 1, after: 0.5 },
        { before: 1, after: 1 },
      ],
    }),
    step({ shares: [{ before: 0.5, after: 0.25 }] }),
    step({ minutes: 15, shares: [{ before: 1, after: 0.01 }] }),
  ]
  expect(minutesWithout(steps, 15)).toEqual([180, 45, 240, 240, 240, 240, 240, 120, 15])
})

it('never makes a step longer, nor nothing', () => {
  const share = fc.double({ min: 0.01, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.constantFrom(5, 15, 30),
      fc.array(fc.record({ before: share, after: share }), { maxLength: 3 }),
      (grids, gridMin, shares) => {
        const [minutes] = minutesWithout([step({ minutes: grids * gridMin, shares })], gridMin)
        expect(minutes).toBeGreaterThanOrEqual(gridMin)
        expect(minutes).toBeLessThanOrEqual(grids * gridMin)
        expect(minutes! % gridMin).toBe(0)
      },
    ),
  )
})
