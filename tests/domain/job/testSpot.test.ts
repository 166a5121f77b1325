import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  correctionAfter,
  correctionOf,
  priceAfter,
  spotCautions,
  spotPriceWeight,
} from '../../../main/domain/job/index.ts'
import type { CorrectionStep } from '../../../main/domain/job/testSpot.ts'

const step = (stage: string, minutes: number, actualStartAt: number | null = null): CorrectionStep => ({
  kind: 'work',
  stage,
  minutes,
  actualStartAt,
})
const chain = [
  step('prepare', 60, 0),
  step('test', 45, 60),
  step('correct', 450),
  step('correct', 300),
  step('coat', 90),
]

test('What one panel took is carried over eleven panels, and divided as it was planned', () => {
  // 66 min × 11 = 726 min: 450 of 750 parts of it are 435.6, the rest 290.4, each up to the grid.
  expect(correctionAfter(chain, { perPanelMin: 66, share: 1, gridMin: 15 })).toEqual([60, 45, 450, 300, 90])
  // 90 × 11 = 990: 594 and 396.
  expect(correctionAfter(chain, { perPanelMin: 90, share: 1, gridMin: 15 })).toEqual([60, 45, 600, 405, 90])
  // A front end, 35 hundredths: 346.5, so 207.9 and 138.6.
  expect(correctionAfter(chain, { perPanelMin: 90, share: 0.35, gridMin: 15 })).toEqual([
    60, 45, 210, 150, 90,
  ])
})

test('A correction that has begun is no plan any more', () => {
  const begun = chain.with(2, step('correct', 450, 120))
  expect(correctionOf(begun)).toEqual({ all: [2, 3], ahead: [3] })
  expect(correctionAfter(begun, { perPanelMin: 60, share: 1, gridMin: 15 }).slice(0, 3)).toEqual([
    60, 45, 450,
  ])
})

test('Laws: only the correction changes, it is never shorter than the spot says, nor a grid step a part longer', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom('prepare', 'correct', 'coat'), fc.integer({ min: 1, max: 40 })), {
        minLength: 1,
        maxLength: 8,
      }),
      fc.integer({ min: 1, max: 240 }),
      fc.integer({ min: 1, max: 100 }),
      (parts, perPanelMin, hundredths) => {
        const steps = parts.map(([stage, grid]) => step(stage, grid * 15))
        const after = correctionAfter(steps, { perPanelMin, share: hundredths / 100, gridMin: 15 })
        const { ahead } = correctionOf(steps)
        for (const [i, each] of steps.entries()) if (!ahead.includes(i)) expect(after[i]).toBe(each.minutes)
        const total = ahead.reduce((sum, i) => sum + after[i]!, 0)
        const needed = (perPanelMin * 11 * hundredths) / 100
        if (ahead.length > 0) {
          expect(total).toBeGreaterThanOrEqual(needed - 1e-6)
          expect(total).toBeLessThan(Math.max(needed, 0) + 15 * ahead.length + 1e-6)
        }
        for (const minutes of after) expect(minutes % 15).toBe(0)
      },
    ),
  )
})

test('The price follows as far as it is correction, and is the same where the time is', () => {
  const steps = [
    { stage: 'prepare', minutes: 60 },
    { stage: 'correct', minutes: 240 },
  ]
  expect(spotPriceWeight(steps)).toBe(0.8)
  expect(spotPriceWeight([])).toBe(0)
  // Half as long again: 480.00 of which 384.00 is correction, and half of that more.
  expect(priceAfter(48_000, 0.8, { before: 240, after: 360 })).toBe(67_200)
  expect(priceAfter(48_000, 0.8, { before: 240, after: 240 })).toBe(48_000)
  expect(priceAfter(48_000, 0.8, { before: 0, after: 240 })).toBe(48_000)
})

test('Much clear coat off, or no gloss gained, is said (common practice, no source)', () => {
  const figures = { perPanelMin: 60, lostUm: null, glossBefore: null, glossAfter: null }
  expect(spotCautions(figures, 'metric')).toEqual([])
  expect(spotCautions({ ...figures, lostUm: 5, glossBefore: 80, glossAfter: 81 }, 'metric')).toEqual([])
  expect(spotCautions({ ...figures, lostUm: 5.1 }, 'metric')[0]).toContain('5.1 µm off one spot')
  // 5.1 µm are 0.2008 mil, of 25.4 µm.
  expect(spotCautions({ ...figures, lostUm: 5.1 }, 'us')[0]).toContain(
    '0.20 mil off one spot is much (more than 0.20 mil',
  )
  expect(spotCautions({ ...figures, glossBefore: 80, glossAfter: 80 }, 'metric')).toHaveLength(1)
})
