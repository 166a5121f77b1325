import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  minutesOf,
  movedPoint,
  points,
  reachOf,
  sensible,
  stepped,
} from '../../../../../app/screens/settings/products/bandDrag.ts'
import { checkProfile, commonPracticeProfile } from '../../../../../main/domain/cure/index.ts'

const profile = commonPracticeProfile()
const ofSheet = { ...profile, sources: { ...profile.sources, handoverMin: 'data sheet' as const } }

test('a point is let go at a time somebody would say', () => {
  expect([22, 100, 723, 1470, 10_100].map(sensible)).toEqual([20, 105, 720, 1440, 10_080])
})

test('a key goes to the next such time, from one that is none too, and back again', () => {
  expect([0, 58, 60, 1440].map(minutes => stepped(minutes, 1))).toEqual([5, 60, 75, 1560])
  expect([5, 60, 75, 1440].map(minutes => stepped(minutes, -1))).toEqual([0, 55, 60, 1410])
  expect(stepped(725, 1)).toBe(750)
  expect(stepped(720, 4)).toBe(840)
})

test('a point never passes the one it follows, nor the one that follows it', () => {
  expect(movedPoint(profile, 'tackFreeMin', 2000).tackFreeMin).toBe(profile.handoverMin)
  expect(movedPoint(profile, 'handoverMin', 5000).handoverMin).toBe(profile.handoverAdvisedMin)
  expect(movedPoint(profile, 'fullCure.lateMin', 60).fullCure.lateMin).toBe(profile.fullCure.earlyMin)
  expect(movedPoint(profile, 'firstPeriod.earlyMin', Number.NEGATIVE_INFINITY).firstPeriod.earlyMin).toBe(1)
})

test('pick-up is not dragged under common practice, as no data sheet says so', () => {
  // Common practice, no source: handover not before 4 h, advised not before 12 h.
  expect(movedPoint({ ...profile, tackFreeMin: 30 }, 'handoverMin', 60).handoverMin).toBe(240)
  const sooner = { ...profile, handoverMin: 300 }
  expect(movedPoint(sooner, 'handoverAdvisedMin', 300).handoverAdvisedMin).toBe(720)
})

test('a figure moved by hand is the data sheet’s no more; one left where it stands is', () => {
  expect(movedPoint(ofSheet, 'handoverMin', 780).sources.handoverMin).toBe('common practice')
  expect(movedPoint(ofSheet, 'handoverMin', 720)).toBe(ofSheet)
})

test('whatever is dragged, the profile can be saved and each point lies within its reach', () => {
  const moves = fc.array(
    fc.tuple(
      fc.constantFrom(...points),
      fc.integer({ min: 0, max: 40_000 }),
      fc.integer({ min: -9, max: 9 }),
    ),
    { maxLength: 15 },
  )
  fc.assert(
    fc.property(moves, list => {
      let now = profile
      for (const [point, to, by] of list) {
        now = movedPoint(now, point, sensible(to))
        now = movedPoint(now, point, stepped(minutesOf(now, point), by))
      }
      checkProfile(now)
      for (const point of points) {
        const { least, most } = reachOf(now, point)
        expect(minutesOf(now, point)).toBeGreaterThanOrEqual(least)
        expect(minutesOf(now, point)).toBeLessThanOrEqual(most)
      }
    }),
  )
})
