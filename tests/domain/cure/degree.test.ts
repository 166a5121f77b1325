import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkProfile, commonPracticeProfile, cureCurve } from '../../../main/domain/cure/index.ts'
import { soundProfiles } from './profiles.ts'

const hour = 60
const day = 24 * hour

describe('the degree of cure', () => {
  it('is 85 % at the end of the first 12 to 24 h and 100 % by 7 to 10 days (common practice, no source)', () => {
    const curve = cureCurve(commonPracticeProfile())
    expect(curve.degreeAt(12 * hour).early).toBeCloseTo(0.85, 12)
    expect(curve.degreeAt(24 * hour).late).toBeCloseTo(0.85, 12)
    expect(curve.degreeAt(18 * hour).likely).toBeCloseTo(0.85, 12)
    expect(curve.degreeAt(7 * day).early).toBe(1)
    expect(curve.degreeAt(7 * day - 1).early).toBeLessThan(1)
    expect(curve.degreeAt(10 * day).late).toBe(1)
    expect(curve.degreeAt(10 * day - 1).late).toBeLessThan(1)
  })

  it('starts at nothing and stays at one', () => {
    const curve = cureCurve(commonPracticeProfile())
    for (const age of [-100, 0]) expect(curve.degreeAt(age)).toEqual({ early: 0, likely: 0, late: 0 })
    expect(curve.degreeAt(400 * day)).toEqual({ early: 1, likely: 1, late: 1 })
  })

  it('never falls, stays between 0 and 1, and keeps late <= likely <= early', () => {
    fc.assert(
      fc.property(
        soundProfiles,
        fc.array(fc.double({ min: 0, max: 50_000, noNaN: true }), { minLength: 2, maxLength: 40 }),
        (profile, ages) => {
          checkProfile(profile)
          const curve = cureCurve(profile)
          let before = { early: 0, likely: 0, late: 0 }
          for (const age of ages.sort((a, b) => a - b)) {
            const now = curve.degreeAt(age)
            expect(now.late).toBeLessThanOrEqual(now.likely)
            expect(now.likely).toBeLessThanOrEqual(now.early)
            for (const bound of ['early', 'likely', 'late'] as const) {
              expect(now[bound]).toBeGreaterThanOrEqual(before[bound] - 1e-12)
              expect(now[bound]).toBeLessThanOrEqual(1)
            }
            before = now
          }
        },
      ),
    )
  })

  it('finds the time a degree takes, bound by bound', () => {
    fc.assert(
      fc.property(soundProfiles, fc.double({ min: 0, max: 1, noNaN: true }), (profile, degree) => {
        const curve = cureCurve(profile)
        const ages = curve.ageAt(degree)
        expect(ages.early).toBeLessThanOrEqual(ages.likely)
        expect(ages.likely).toBeLessThanOrEqual(ages.late)
        for (const bound of ['early', 'likely', 'late'] as const)
          expect(curve.degreeAt(ages[bound])[bound]).toBeCloseTo(degree, 9)
      }),
    )
  })
})
