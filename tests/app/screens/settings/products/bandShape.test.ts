import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  axisFor,
  axisOf,
  bandShape,
  box,
  rail,
} from '../../../../../app/screens/settings/products/bandShape.ts'
import { commonPracticeProfile, cureCurve } from '../../../../../main/domain/cure/index.ts'

const profile = {
  ...commonPracticeProfile(),
  topper: { minMin: 240, advisedMin: 300, maxMin: null, productIds: ['veil'] },
}

const pointsOf = (path: string) =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(match => ({ x: Number(match[1]), y: Number(match[2]) }))

test('the likely curve runs from nothing to full, never falls, and stays between its bounds', () => {
  const shape = bandShape(profile)!
  const likely = pointsOf(shape.likely)
  expect(likely[0]).toEqual({ x: box.left, y: box.height - box.bottom })
  const whole = likely.findIndex(point => point.y === box.top)
  expect(likely[whole]!.x).toBeGreaterThanOrEqual(axisOf(axisFor(profile)).x(profile.fullCure.earlyMin))
  expect(likely.at(-1)).toEqual({ x: box.width - box.right, y: box.top })
  const band = pointsOf(shape.band)
  const early = band.slice(0, likely.length)
  const late = band.slice(likely.length).reverse()
  likely.forEach((point, i) => {
    if (i > 0) expect(point.y).toBeLessThanOrEqual(likely[i - 1]!.y)
    expect(early[i]!.y).toBeLessThanOrEqual(point.y)
    expect(late[i]!.y).toBeGreaterThanOrEqual(point.y)
  })
})

test('the axis turns minutes into places and back, in order', () => {
  const { x, at } = axisOf(axisFor(profile))
  const width = box.width - box.left - box.right
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), share => {
      expect(x(at(share))).toBeCloseTo(box.left + share * width, 6)
    }),
  )
  expect(x(60)).toBeLessThan(x(61))
})

test('the marks lie on the curve at their moments, and are held on the rail below them', () => {
  const { x } = axisOf(axisFor(profile))
  const { marks, grips } = bandShape(profile)!
  // Common practice, no source: handover from 12 h, advised at 24 h.
  expect(marks.map(mark => mark.label)).toEqual([
    'Safe to touch after 4 h',
    'Topper after 4 h',
    'Earliest pick-up after 12 h',
    'Recommended pick-up after 1 d',
  ])
  expect(marks[3]!.x).toBe(x(1440))
  expect(bandShape(commonPracticeProfile())!.marks.map(mark => mark.sign)).toEqual(['▴', '●', '○'])
  const floor = box.height - box.bottom
  const height = cureCurve(profile).degreeAt(1440).likely * (floor - box.top)
  expect(marks[3]!.y).toBeCloseTo(floor - height, 6)
  expect(grips.find(grip => grip.point === 'handoverAdvisedMin')).toEqual({
    point: 'handoverAdvisedMin',
    x: x(1440),
    y: rail,
  })
  // 85 % at the end of the first period, all of it at the full cure.
  const levels = new Map(grips.map(({ point, y }) => [point, y]))
  expect(levels.get('firstPeriod.lateMin')).toBeCloseTo(floor - 0.85 * (floor - box.top), 6)
  expect(levels.get('fullCure.lateMin')).toBe(box.top)
})

test('on an axis that is held the curve moves under its point, and the last has room to go on', () => {
  const axis = axisFor(profile)
  const longer = { ...profile, fullCure: { ...profile.fullCure, lateMin: 12 * 1440 } }
  const { grips } = bandShape(longer, axis)!
  const last = grips.find(grip => grip.point === 'fullCure.lateMin')!
  expect(last.x).toBe(axisOf(axis).x(12 * 1440))
  expect(last.x).toBeLessThan(box.width - box.right)
})

test('words under the axis stand clear of each other, the whole cure always among them', () => {
  const { earlyMin, lateMin } = { earlyMin: 7 * 1440, lateMin: 10 * 1440 }
  const { ticks } = bandShape({ ...profile, fullCure: { earlyMin, lateMin } })!
  expect(ticks.at(-1)!.label).toBe('10 d')
  expect(ticks.map(tick => tick.label)).not.toContain('7 d')
  expect(ticks.length).toBeGreaterThan(3)
  ticks.slice(1).forEach((tick, i) => {
    expect(tick.x - ticks[i]!.x).toBeGreaterThan(60)
  })
})

test.each([
  ['a late bound before the early one', { firstPeriod: { earlyMin: 1440, lateMin: 720, degree: 0.85 } }],
  ['full cure before the first period ends', { fullCure: { earlyMin: 600, lateMin: 700 } }],
  ['a degree of everything', { firstPeriod: { earlyMin: 720, lateMin: 1440, degree: 1 } }],
  ['a figure that is none', { fullCure: { earlyMin: Number.NaN, lateMin: 14_400 } }],
])('%s gives no curve to look at', (_, change) => {
  expect(bandShape({ ...profile, ...change })).toBeNull()
})
