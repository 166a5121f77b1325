import { describe, expect, it } from 'vitest'
import { type CureProfile, checkProfile, commonPracticeProfile } from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

const refusal = (field: string, code: string) => expect.objectContaining({ name: 'Refusal', field, code })
const period = sheetProfile.firstPeriod
const topper = sheetProfile.topper!
const recoatRow = { window: 'recoat' as const, fromC: 10, toC: 15, minMin: 120, maxMin: 300 }

describe('what a cure profile may not say', () => {
  it('takes sound ones', () => {
    expect(() => checkProfile(sheetProfile)).not.toThrow()
    expect(() => checkProfile(commonPracticeProfile())).not.toThrow()
    const atTheLimits: CureProfile = {
      ...sheetProfile,
      tackFreeMin: 0,
      recoat: { minMin: 60, maxMin: 60 },
      topper: { ...topper, advisedMin: 60, maxMin: 60 },
      windowRows: [recoatRow, { ...recoatRow, fromC: 15, toC: 18 }],
      temperature: { minC: -20, maxC: 60 },
      humidity: { minPercent: 0, maxPercent: 100 },
      rate: { rule: 'linear', datumC: 19 },
      forcedCure: [{ panelC: 20, minutes: 30, standsForMin: 30 }],
    }
    expect(() => checkProfile(atTheLimits)).not.toThrow()
  })

  it.each<[string, Partial<CureProfile>, string, string]>([
    ['a negative duration', { tackFreeMin: -5 }, 'tackFreeMin', 'duration-bad'],
    ['half a minute', { keepDryMin: 0.5 }, 'keepDryMin', 'duration-bad'],
    ['no number', { handoverMin: Number.NaN }, 'handoverMin', 'duration-bad'],
    ['more than a year', { firstWashMin: 600_000 }, 'firstWashMin', 'duration-bad'],
    ['a negative recoat wait', { recoat: { minMin: -1, maxMin: 5 } }, 'recoat.minMin', 'duration-bad'],
    [
      'a recoat minimum past its maximum',
      { recoat: { minMin: 90, maxMin: 60 } },
      'recoat.maxMin',
      'order-wrong',
    ],
    [
      'a topper advised before its minimum',
      { topper: { ...topper, advisedMin: 59 } },
      'topper.advisedMin',
      'order-wrong',
    ],
    [
      'a topper closed before it is advised',
      { topper: { ...topper, maxMin: 70 } },
      'topper.maxMin',
      'order-wrong',
    ],
    [
      'times for a topper nobody names',
      { topper: { ...topper, productIds: [] } },
      'topper.productIds',
      'toppers-missing',
    ],
    [
      'a row for a window there is none of',
      { recoat: null, windowRows: [recoatRow] },
      'windowRows.0.window',
      'window-missing',
    ],
    [
      'a row from warm to cold',
      { windowRows: [{ ...recoatRow, toC: 9 }] },
      'windowRows.0.toC',
      'number-out-of-range',
    ],
    [
      'a row that closes before it opens',
      { windowRows: [{ ...recoatRow, maxMin: 119 }] },
      'windowRows.0.maxMin',
      'order-wrong',
    ],
    [
      'a row that never closes where the window does',
      { windowRows: [{ ...recoatRow, maxMin: null }] },
      'windowRows.0.maxMin',
      'window-end',
    ],
    [
      'a row that opens at once',
      { windowRows: [{ ...recoatRow, minMin: 0 }] },
      'windowRows.0.minMin',
      'duration-bad',
    ],
    [
      'two rows at one temperature',
      { windowRows: [{ ...recoatRow, fromC: 12, toC: 20 }, recoatRow] },
      'windowRows.0.fromC',
      'rows-overlap',
    ],
    ['handover before tack-free', { tackFreeMin: 361 }, 'handoverMin', 'order-wrong'],
    ['handover advised before its minimum', { handoverAdvisedMin: 359 }, 'handoverAdvisedMin', 'order-wrong'],
    ['a wash before the car may get wet', { firstWashMin: 1439 }, 'firstWashMin', 'order-wrong'],
    [
      'a late bound before the early one',
      { firstPeriod: { ...period, lateMin: 719 } },
      'firstPeriod.lateMin',
      'order-wrong',
    ],
    [
      'full cure late before early',
      { fullCure: { earlyMin: 9000, lateMin: 8000 } },
      'fullCure.lateMin',
      'order-wrong',
    ],
    [
      'full cure before handover',
      { fullCure: { earlyMin: 719, lateMin: 8000 } },
      'fullCure.earlyMin',
      'order-wrong',
    ],
    [
      'full cure no later than the first period',
      { fullCure: { earlyMin: 720, lateMin: 8000 } },
      'fullCure.earlyMin',
      'order-wrong',
    ],
    [
      'a first period of nothing',
      { firstPeriod: { ...period, earlyMin: 0 } },
      'firstPeriod.earlyMin',
      'duration-bad',
    ],
    ['a degree in per cent', { firstPeriod: { ...period, degree: 85 } }, 'firstPeriod.degree', 'degree-bad'],
    [
      'a cold that is none',
      { temperature: { minC: -80, maxC: 30 } },
      'temperature.minC',
      'number-out-of-range',
    ],
    [
      'an empty temperature range',
      { temperature: { minC: 30, maxC: 10 } },
      'temperature.maxC',
      'range-empty',
    ],
    [
      '140 % humidity',
      { humidity: { minPercent: 30, maxPercent: 140 } },
      'humidity.maxPercent',
      'number-out-of-range',
    ],
    [
      'an empty humidity range',
      { humidity: { minPercent: 50, maxPercent: 50 } },
      'humidity.maxPercent',
      'range-empty',
    ],
    ['a reference below freezing', { referenceC: -1 }, 'referenceC', 'number-out-of-range'],
    [
      'no activation energy',
      { rate: { rule: 'arrhenius', activationOverRK: 0 } },
      'rate.activationOverRK',
      'number-out-of-range',
    ],
    [
      'a lamp colder than the reference',
      { forcedCure: [{ panelC: 19, minutes: 5, standsForMin: 9 }] },
      'forcedCure.0.panelC',
      'number-out-of-range',
    ],
    [
      'a lamp that takes no time',
      { forcedCure: [{ panelC: 60, minutes: 0, standsForMin: 9 }] },
      'forcedCure.0.minutes',
      'duration-bad',
    ],
    [
      'a lamp that slows the cure',
      { forcedCure: [{ panelC: 60, minutes: 30, standsForMin: 29 }] },
      'forcedCure.0.standsForMin',
      'order-wrong',
    ],
    ['a recoat window without words for missing it', { missedRecoat: ' ' }, 'missedRecoat', 'text-missing'],
    ['a degree of everything', { firstPeriod: { ...period, degree: 1 } }, 'firstPeriod.degree', 'degree-bad'],
    ['a degree of nothing', { firstPeriod: { ...period, degree: 0 } }, 'firstPeriod.degree', 'degree-bad'],
    ['one temperature only', { temperature: { minC: 20, maxC: 20 } }, 'temperature.maxC', 'range-empty'],
    [
      'a datum at the reference',
      { rate: { rule: 'linear', datumC: 20 } },
      'rate.datumC',
      'number-out-of-range',
    ],
  ])('refuses %s', (_, change, field, code) => {
    expect(() => checkProfile({ ...sheetProfile, ...change })).toThrow(refusal(field, code))
  })
})

describe('a temperature at fault', () => {
  // 1.8 t/°C + 32, NIST Special Publication 811, appendix B.8: 150 °F are 65.56 °C.
  it.each<[Partial<CureProfile>, string, string]>([
    [
      { temperature: { minC: 118 / 1.8, maxC: 70 } },
      '150 °F cannot be right; use -4 °F to 140 °F.',
      '65.6 °C cannot be right; use -20 °C to 60 °C.',
    ],
    [
      { temperature: { minC: 30, maxC: 10 } },
      '50 °F is not above the least, 86 °F; exchange them.',
      '10 °C is not above the least, 30 °C; exchange them.',
    ],
    [
      { forcedCure: [{ panelC: 10, minutes: 30, standsForMin: 60 }] },
      '50 °F cannot be right; use 68 °F to 392 °F.',
      '10 °C cannot be right; use 20 °C to 200 °C.',
    ],
    [
      { rate: { rule: 'linear', datumC: 25 } },
      '77 °F cannot be right; use -40 °F to 66.2 °F.',
      '25 °C cannot be right; use -40 °C to 19 °C.',
    ],
  ])('is named in the unit it was typed in', (change, us, metric) => {
    expect(() => checkProfile({ ...sheetProfile, ...change }, 'us')).toThrow(us)
    expect(() => checkProfile({ ...sheetProfile, ...change })).toThrow(metric)
  })

  it('is not confused with humidity or energy', () => {
    const humid = { ...sheetProfile, humidity: { minPercent: 30, maxPercent: 140 } }
    expect(() => checkProfile(humid, 'us')).toThrow('140 % cannot be right; use 0 % to 100 %.')
    const hot: CureProfile = { ...sheetProfile, rate: { rule: 'arrhenius', activationOverRK: 60_000 } }
    expect(() => checkProfile(hot, 'us')).toThrow('60000 K cannot be right; use 1 K to 50000 K.')
  })
})

describe('handover before 4 h (common practice, no source)', () => {
  it.each(['handoverMin'] as const)('%s needs the data sheet to say so', field => {
    const practice = { ...commonPracticeProfile(), tackFreeMin: 30 }
    const early = { ...practice, [field]: 239 }
    expect(() => checkProfile(early)).toThrow(refusal(field, 'below-practice'))
    expect(() => checkProfile(early)).toThrow(/4 h of common practice/)
    const marked = { ...early, sources: { ...early.sources, [field]: 'data sheet' as const } }
    expect(() => checkProfile(marked)).not.toThrow()
    expect(() => checkProfile({ ...practice, [field]: 240 })).not.toThrow()
  })

  it.each(['handoverAdvisedMin'] as const)('%s is 12 h or more by practice', field => {
    const early = { ...commonPracticeProfile(), handoverMin: 240, [field]: 719 }
    expect(() => checkProfile(early)).toThrow(refusal(field, 'below-practice'))
  })
})
