import { expect, test } from 'vitest'
import { clockMilestones } from '../../../main/domain/cure/index.ts'
import { laidAt, sheetProfile } from './profiles.ts'

// The sheet: topper 60 to 120 minutes, handover 360; the rate doubles every 10 °C (common practice, no source).
const profile = { ...sheetProfile, rate: { rule: 'doubling' as const } }
const at = (celsius: number, nextMin = 0) => {
  const { topperOpens, topperCloses, handoverSafe } = clockMilestones(
    laidAt(profile, 0, { usualC: celsius }),
    nextMin,
  )
  return [topperOpens?.at, topperCloses?.at, handoverSafe?.at]
}

test('What opens runs by the slow clock, what closes by the fast one', () => {
  expect(at(20)).toEqual([60, 120, 360])
  expect(at(10)).toEqual([120, 120, 720])
  expect(at(30)).toEqual([60, 60, 360])
})

test('What goes over it is counted to its last panel', () => {
  // One panel in forty minutes: it may come first in them, and its turn must have come by 120.
  expect(at(20, 40)).toEqual([60, 80, 360])
})

test('Fractions round to the safe side at either end', () => {
  // At 25 °C by 2^0.5: 120 minutes are over after 84.85.
  expect(at(25)).toEqual([60, 84, 360])
  expect(at(15)[0]).toBe(85)
})
