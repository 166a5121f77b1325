import { expect, test } from 'vitest'
import { coatWindow, plannedWindow } from '../../../main/domain/cure/index.ts'
import { laidAt, sheetProfile } from './profiles.ts'

// The sheet: recoat 60 to 240 minutes, topper 60 to 120; reference 20 °C.
test('A laid coat leaves the window its figures and clocks make, for every panel', () => {
  const coat = laidAt(sheetProfile, 200, {}, [], 80)
  expect(coat.laying).toEqual({ fromAt: 120, toAt: 200 })
  expect(coatWindow(coat, 'recoat', 80)).toEqual({ opensAt: 200, closesAt: 360 })
  expect(coatWindow(coat, 'topper', 0)).toEqual({ opensAt: 260, closesAt: 240 })
})

test('A planned one has the same at the reference temperature', () => {
  const laying = { fromAt: 120, toAt: 200 }
  expect(plannedWindow(sheetProfile, 'recoat', laying, 80)).toEqual({ opensAt: 200, closesAt: 360 })
})

test('What the sheet does not name has no window', () => {
  const silent = { ...sheetProfile, topper: null }
  expect(coatWindow(laidAt(silent, 200), 'topper', 45)).toBeNull()
  expect(plannedWindow(silent, 'topper', { fromAt: 0, toAt: 60 }, 45)).toBeNull()
  const open = { ...sheetProfile, topper: { ...sheetProfile.topper!, maxMin: null } }
  expect(coatWindow(laidAt(open, 200), 'topper', 45)?.closesAt).toBeNull()
})
