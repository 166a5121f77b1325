import { expect, test } from 'vitest'
import { reachedOutside, usualOutside } from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

// The sheet: dry for 1440 minutes at 20 °C. The rate doubles every 10 °C (common practice, no source).
const profile = { ...sheetProfile, rate: { rule: 'doubling' as const } }
const dryAt = (outsideC: number, leftAgeMin = 240) =>
  reachedOutside(profile, { leavesAt: 1000, leftAgeMin, outsideC }, 1440)

test('What is left of a cure runs by the weather outside: cold lengthens it, heat does not shorten it', () => {
  expect(dryAt(20)).toBe(1000 + 1200)
  expect(dryAt(10)).toBe(1000 + 2400)
  expect(dryAt(0)).toBe(1000 + 4800)
  expect(dryAt(35)).toBe(1000 + 1200)
})

test('What is over when the car leaves is over then; what the cold never lets it reach is never', () => {
  expect(dryAt(0, 1440)).toBe(1000)
  const frozen = { ...profile, rate: { rule: 'linear' as const, datumC: 5 } }
  expect(reachedOutside(frozen, { leavesAt: 1000, leftAgeMin: 240, outsideC: 4 }, 1440)).toBeNull()
})

test('A month has the usual temperature of its season', () => {
  const usual = { decFeb: 1, marMay: 2, junAug: 3, sepNov: 4 }
  const months = Array.from({ length: 12 }, (_, i) => usualOutside(usual, i + 1))
  expect(months).toEqual([1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 1])
})
