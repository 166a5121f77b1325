import { expect, it } from 'vitest'
import { meterDrift } from '../../../main/domain/measure/index.ts'

const at = { today: 365, allowedGu: 1 }
const straight = [0, 90, 180, 270].map(day => ({ day, offGu: (-0.8 * day) / 365 }))

it('follows a meter that drifts straight on, in any order, and says where it reads next', () => {
  const drift = meterDrift([straight[2]!, straight[0]!, straight[3]!, straight[1]!], at)!
  expect(drift).toMatchObject({ readings: 4, lastOffGu: straight[3]!.offGu, leaves: false })
  expect(drift.aYearGu).toBeCloseTo(-0.8, 9)
  expect(drift.next!.low).toBeCloseTo(-0.8, 9)
  expect(drift.next!.high).toBeCloseTo(-0.8, 9)
  expect(meterDrift(straight, { ...at, today: 500 })).toMatchObject({ leaves: true })
})

it('one slip moves no trend, but widens what the next reading may be', () => {
  const days = [0, 30, 60, 90, 120, 150, 180].map(day => ({ day, offGu: 0 }))
  const slipped = meterDrift([...days, { day: 75, offGu: 6 }], at)!
  expect(slipped.aYearGu).toBeCloseTo(0, 9)
  expect(slipped.leaves).toBe(true)
  expect(meterDrift(days, at)).toMatchObject({ leaves: false, aYearGu: 0 })
})

it('draws no line through too few readings or a single day', () => {
  expect(meterDrift([], at)).toBeNull()
  for (const few of [straight.slice(0, 2), [1, 2, 3].map(offGu => ({ day: 5, offGu }))])
    expect(meterDrift(few, at)).toMatchObject({ aYearGu: null, next: null, leaves: false })
})

it('looks at the latest sixty only', () => {
  const old = Array.from({ length: 50 }, (_, i) => ({ day: -1000 + i, offGu: 50 }))
  const now = Array.from({ length: 60 }, (_, i) => ({ day: i, offGu: 0 }))
  expect(meterDrift([...now, ...old], at)).toMatchObject({ readings: 60, lastOffGu: 0, aYearGu: 0 })
})
