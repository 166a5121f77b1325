/** Profiles for the tests: sound ones, invented. */
import fc from 'fast-check'
import { allFrom } from '../../../main/domain/cure/commonPractice.ts'
import {
  type CureProfile,
  commonPracticeProfile,
  type Heating,
  laidCoat,
  type RateRule,
} from '../../../main/domain/cure/index.ts'
import type { BayTemperatures } from '../../../main/domain/cure/temperatures.ts'

/** A coating with every figure from an invented data sheet: two layers, a topper within 1 to 2 h, a lamp row. */
export const sheetProfile: CureProfile = {
  tackFreeMin: 45,
  recoat: { minMin: 60, maxMin: 240 },
  topper: { minMin: 60, advisedMin: 75, maxMin: 120, productIds: ['topper'] },
  windowRows: [],
  handoverMin: 360,
  handoverAdvisedMin: 720,
  keepDryMin: 1440,
  firstWashMin: 7 * 1440,
  firstPeriod: { earlyMin: 720, lateMin: 1440, degree: 0.85 },
  fullCure: { earlyMin: 7 * 1440, lateMin: 10 * 1440 },
  temperature: { minC: 10, maxC: 30 },
  humidity: { minPercent: 30, maxPercent: 75 },
  referenceC: 20,
  rate: { rule: 'arrhenius', activationOverRK: 5000 },
  forcedCure: [{ panelC: 60, minutes: 30, standsForMin: 720 }],
  missedRecoat: 'Abrade with a fine pad, wipe down and lay the layer again.',
  sources: allFrom('data sheet'),
}

/** A coat finished at a minute after so many minutes of laying; with none, it is one panel. */
export const laidAt = (
  profile: CureProfile,
  toAt: number,
  temperatures: Partial<BayTemperatures> = {},
  heatings: readonly Heating[] = [],
  minutes = 0,
) =>
  laidCoat(
    profile,
    { fromAt: toAt - minutes, toAt },
    { readings: [], usualC: 20, nowAt: 0, ...temperatures, usualFrom: 'set' },
    heatings,
  )

/** Sound profiles of all lengths, late bounds after early ones. */
export const soundProfiles = fc
  .record({
    first: fc.integer({ min: 1, max: 3000 }),
    firstBand: fc.integer({ min: 0, max: 3000 }),
    full: fc.integer({ min: 1, max: 20_000 }),
    fullBand: fc.integer({ min: 0, max: 20_000 }),
    degree: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
  })
  .map(
    ({ first, firstBand, full, fullBand, degree }): CureProfile => ({
      ...commonPracticeProfile(),
      firstPeriod: { earlyMin: first, lateMin: first + firstBand, degree },
      fullCure: { earlyMin: first + full + 1440, lateMin: first + firstBand + full + 1440 + fullBand },
    }),
  )

/** Every kind of rate rule, gentle and steep. */
export const rules: fc.Arbitrary<RateRule> = fc.oneof(
  fc.record({
    rule: fc.constant('arrhenius' as const),
    activationOverRK: fc.double({ min: 1000, max: 12_000, noNaN: true }),
  }),
  fc.constant({ rule: 'doubling' as const }),
  fc.record({ rule: fc.constant('linear' as const), datumC: fc.double({ min: -10, max: 10, noNaN: true }) }),
)

/** A bay's log: readings 1 to `longestGap` minutes apart, the first at minute 0. */
export const logs = (longestGap: number, coldest = -10, hottest = 40) =>
  fc
    .array(
      fc.record({
        wait: fc.integer({ min: 1, max: longestGap }),
        celsius: fc.double({ min: coldest, max: hottest, noNaN: true }),
      }),
      { minLength: 1, maxLength: 40 },
    )
    .map(steps => {
      let at = 0
      return steps.map(({ wait, celsius }, i) => {
        if (i > 0) at += wait
        return { at, celsius }
      })
    })
