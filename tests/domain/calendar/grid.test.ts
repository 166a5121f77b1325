import { expect, test } from 'vitest'
import { gridDown, gridUp } from '../../../main/domain/calendar/index.ts'

test.each([
  [100, 100, 100],
  [101, 100, 115],
  [114, 100, 115],
  [115, 115, 115],
  // Points lie before the anchor too.
  [99, 85, 100],
  [85, 85, 85],
])('A grid of 15 minutes from 100 on has beside %i the points %i and %i', (at, down, up) => {
  const grid = { gridMin: 15, gridFrom: 100 }
  expect([gridDown(grid, at), gridUp(grid, at)]).toEqual([down, up])
})
