import { describe, expect, test } from 'vitest'
import { curvePath } from '../../../../../app/screens/board/geometry/curve.ts'
import { laneAt, laneHeight, laneTop } from '../../../../../app/screens/board/geometry/lanes.ts'
import { timeAxis } from '../../../../../app/screens/board/geometry/timeAxis.ts'

const axis = timeAxis([], 0, 1000, 0, 1000, 1)
const heights = (path: string) => [...path.matchAll(/L([\d.]+) ([\d.]+)/g)].map(match => Number(match[2]))

describe('the curve of a hold', () => {
  test('starts at the floor with the coat and climbs with the degree of cure', () => {
    const path = curvePath(axis, 100, 100, 500, { top: 10, height: 50 }, minutes => minutes / 400)
    const ys = heights(path)
    expect(ys[0]).toBe(60)
    expect(Math.min(...ys)).toBe(10)
    expect(ys.slice(0, -1)).toEqual([...ys.slice(0, -1)].sort((a, b) => b - a))
  })

  test('goes on from the coat’s own age where the hold enters later', () => {
    const ys = heights(curvePath(axis, 0, 200, 400, { top: 0, height: 100 }, minutes => minutes / 400))
    expect(ys[0]).toBe(50)
  })

  test('is empty where the hold lies outside the axis', () => {
    expect(curvePath(axis, 0, 1200, 1400, { top: 0, height: 10 }, () => 1)).toBe('')
  })
})

describe('the rows', () => {
  test('find the bay under a pixel and hold to the first and last', () => {
    const lanes = { top: 44, height: 98, count: 4 }
    expect([laneAt(lanes, 0), laneAt(lanes, laneTop(lanes, 2) + 1), laneAt(lanes, 9999)]).toEqual([0, 2, 3])
  })

  test('share the room but stay readable', () => {
    expect([laneHeight(400, 4, 58, 120), laneHeight(400, 12, 58, 120), laneHeight(4000, 2, 58, 120)]).toEqual(
      [100, 58, 120],
    )
  })
})
