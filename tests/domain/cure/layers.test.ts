import { expect, it } from 'vitest'
import { windowVerdict } from '../../../main/domain/cure/index.ts'

it.each([
  [159, 'too early'],
  [160, 'met'],
  [340, 'met'],
  [341, 'too late'],
])('a layer begun at %s in a window from 160 to 340 is %s', (startAt, verdict) => {
  expect(windowVerdict({ opensAt: 160, closesAt: 340 }, startAt)).toBe(verdict)
})

it('says so where no start is right', () => {
  expect(windowVerdict({ opensAt: 340, closesAt: 160 }, 250)).toBe('closes before it opens')
  expect(windowVerdict({ opensAt: null, closesAt: 160 }, 250)).toBe('closes before it opens')
  expect(windowVerdict({ opensAt: null, closesAt: null }, 250)).toBe('too early')
  expect(windowVerdict({ opensAt: 160, closesAt: null }, 9_000)).toBe('met')
})
