import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { cureAge } from '../../../app/parts/cureAge.ts'
import type { CureMarks } from '../../../main/api/views.ts'
import { clockView, commonPracticeProfile, laidCoat } from '../../../main/domain/cure/index.ts'

const marks = (clock: CureMarks['clock']) => ({ coatEndAt: 1000, clock }) as CureMarks

test('A planned coat ages a minute a minute, from its planned end', () => {
  const age = cureAge(marks(null))
  expect([age(900), age(1000), age(1090)]).toEqual([0, 0, 90])
})

test('A laid coat’s line, joined from the points a screen is given, never strays far from its clock', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 2, max: 30, noNaN: true }), { minLength: 2, maxLength: 60 }),
      fc.integer({ min: 0, max: 4000 }),
      (degrees, later) => {
        const readings = degrees.map((celsius, i) => ({ at: 1000 + 30 * i, celsius }))
        const nowAt = readings.at(-1)!.at
        const profile = commonPracticeProfile()
        const laying = { fromAt: 1000, toAt: 1000 }
        const laid = laidCoat(profile, laying, { readings, usualC: 15, usualFrom: 'set', nowAt })
        const { clock } = laid
        const age = cureAge(marks(clockView(laid, 1240, 1720)))
        const at = 1000 + later
        // The rate lies between 0 and 1, so between two points a straight line is never off by more than their distance.
        const apart = Math.max(60, (nowAt - 1000) / 24)
        expect(Math.abs(age(at) - clock.ageAt(at))).toBeLessThanOrEqual(apart)
        expect(age(at + 1)).toBeGreaterThanOrEqual(age(at))
      },
    ),
    { numRuns: 200 },
  )
})
