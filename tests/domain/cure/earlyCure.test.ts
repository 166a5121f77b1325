import { expect, test } from 'vitest'
import { commonPracticeProfile, earlyCureUntil, earlyFlags } from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

const read = (at: number, humidityPercent: number, panelC: number | null = 20) => ({
  at,
  airC: 20,
  humidityPercent,
  panelC,
})

// The sheet: 30 to 75 % relative humidity.
test('Humidity outside the range of the sheet is told with its stretch and its worst, and nothing else is', () => {
  expect(earlyFlags(sheetProfile, [read(0, 50), read(30, 75), read(60, 30)])).toEqual([])
  const flags = earlyFlags(sheetProfile, [
    read(0, 76),
    read(30, 50),
    read(60, 82),
    read(90, 29),
    read(120, 77),
  ])
  expect(flags.filter(({ code }) => code !== 'dew-margin')).toEqual([
    { code: 'air-damp', limit: 75, source: 'data sheet', fromAt: 0, toAt: 120, worst: 82 },
    { code: 'air-dry', limit: 30, source: 'data sheet', fromAt: 90, toAt: 90, worst: 29 },
  ])
})

test('A panel near the dew point is told; one that nobody measured is held against nothing', () => {
  // At 20 °C and 60 % the dew point is 12.0 °C (Magnus formula with WMO coefficients).
  const [flag] = earlyFlags(sheetProfile, [read(0, 60, 16), read(30, 60, 14), read(60, 60, 14.5)])
  expect(flag).toMatchObject({ code: 'dew-margin', limit: 3, source: 'ISO 8502-4', fromAt: 30, toAt: 60 })
  expect(flag?.worst).toBeCloseTo(2, 1)
  expect(earlyFlags(sheetProfile, [read(0, 60, null)])).toEqual([])
})

test('Where the sheet is silent 40 to 65 % stand in: common practice, no source', () => {
  const profile = commonPracticeProfile()
  expect(profile.humidity).toEqual({ minPercent: 40, maxPercent: 65 })
  expect(earlyFlags(profile, [read(0, 40), read(30, 65)])).toEqual([])
  expect(earlyFlags(profile, [read(0, 39), read(30, 66)]).map(({ code, source }) => [code, source])).toEqual([
    ['air-dry', 'common practice'],
    ['air-damp', 'common practice'],
  ])
})

test('The early cure is the first period of the profile', () => {
  expect(earlyCureUntil(sheetProfile, 100)).toBe(100 + 720)
})
