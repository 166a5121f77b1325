import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { snapToGrid, timeAxis } from '../../../../../app/screens/board/geometry/timeAxis.ts'
import { spanSet } from '../../../../../main/domain/calendar/index.ts'

const opening = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 1, max: 700 })), { maxLength: 6 })
  .map(pairs => spanSet(pairs.map(([from, length]) => ({ from, to: from + length }))))

describe('the time axis', () => {
  test('gives opening hours their full width and folds the night', () => {
    const axis = timeAxis([{ from: 480, to: 1080 }], 0, 1440, 100, 1540, 0.2)
    const openWidth = axis.x(1080) - axis.x(480)
    const nightWidth = axis.x(1440) - axis.x(1080) + axis.x(480) - axis.x(0)
    expect(openWidth / 600).toBeCloseTo(5 * (nightWidth / 840), 9)
    expect(axis.x(0)).toBe(100)
    expect(axis.x(1440)).toBeCloseTo(1540, 9)
  })

  test('is a plain ruler on a day with no opening hours', () => {
    const axis = timeAxis([], 0, 1000, 0, 500, 0.2)
    expect(axis.x(500)).toBe(250)
  })

  test('rises, and its inverse leads back to the minute', () => {
    fc.assert(
      fc.property(
        opening,
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 0, max: 5000 }),
        (open, a, b) => {
          const axis = timeAxis(open, 0, 5000, 118, 1400, 0.22)
          if (a < b) expect(axis.x(a)).toBeLessThan(axis.x(b))
          expect(axis.at(axis.x(a))).toBeCloseTo(a, 6)
        },
      ),
    )
  })

  test('holds what lies outside to its ends', () => {
    const axis = timeAxis([{ from: 480, to: 1080 }], 480, 1080, 10, 20, 0.2)
    expect([axis.x(0), axis.x(5000), axis.at(0), axis.at(99)]).toEqual([10, 20, 480, 1080])
  })

  test('snaps to the grid counted from the shop’s midnight', () => {
    expect(snapToGrid(1_000_007, 15, 1_000_000)).toBe(1_000_000)
    expect(snapToGrid(1_000_008, 15, 1_000_000)).toBe(1_000_015)
  })
})
