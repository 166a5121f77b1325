import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type CarMoment, carLine } from '../../../../app/screens/car/carLine.ts'

const today = '2026-04-15'
const size = { width: 1200, rem: 16 }
const day = fc
  .integer({ min: -4000, max: 900 })
  .map(days => Temporal.PlainDate.from(today).add({ days }).toString())
const moment: fc.Arbitrary<CarMoment> = fc.record({
  on: day,
  kind: fc.constantFrom('coat', 'topper', 'job', 'visit', 'inspection', 'reminder', 'coming'),
  words: fc.string({ minLength: 1, maxLength: 20 }),
})
const layer = fc.record({
  productName: fc.constantFrom('One', 'Two', 'Veil'),
  stage: fc.constantFrom('coat' as const, 'topper' as const),
  laidOn: day.filter(on => on <= today),
})

it('has every moment once, by date from left to right, no two closer than a finger is wide', () => {
  fc.assert(
    fc.property(fc.array(moment, { maxLength: 40 }), fc.array(layer, { maxLength: 8 }), (moments, layers) => {
      const { spots, todayX } = carLine({ today, moments, layers, life: null }, size)
      const shown = spots.flatMap(spot => spot.moments)
      expect(shown).toHaveLength(moments.length)
      expect(shown.map(each => each.on)).toEqual(moments.map(each => each.on).sort())
      for (const [i, spot] of spots.entries()) {
        expect(spot.x).toBeGreaterThanOrEqual(0)
        expect(spot.x).toBeLessThanOrEqual(size.width)
        if (i > 0) expect(spot.x - spots[i - 1]!.x).toBeGreaterThanOrEqual(44)
        // Alone it stands at its day, on its side of today.
        if (spot.moments.length > 1) continue
        expect(Math.sign(Math.round(spot.x - todayX))).toBe(spot.moments[0]!.on.localeCompare(today))
      }
    }),
    { numRuns: 300 },
  )
})

it('lays each layer from its day to the next of its kind, layers of one product and day together', () => {
  const { bands } = carLine(
    {
      today,
      moments: [],
      layers: [
        { productName: 'Veil', stage: 'topper', laidOn: '2025-12-01' },
        { productName: 'Veil', stage: 'topper', laidOn: '2025-06-01' },
        { productName: 'One', stage: 'coat', laidOn: '2025-06-01' },
        { productName: 'One', stage: 'coat', laidOn: '2025-06-01' },
      ],
      life: null,
    },
    size,
  )
  expect(bands.map(({ stage, words }) => `${stage}: ${words}`)).toEqual([
    'coat: 2 × One',
    'topper: Veil',
    'topper: Veil',
  ])
  const [coat, first, second] = bands
  expect(first!.fromX).toBe(coat!.fromX)
  expect(first!.toX).toBe(second!.fromX)
  expect(second!.toX).toBe(coat!.toX)
})

it('writes no words of the line over others', () => {
  fc.assert(
    fc.property(fc.array(moment, { maxLength: 40 }), moments => {
      const { spots } = carLine({ today, moments, layers: [], life: null }, size)
      const labels = spots.flatMap(spot => (spot.label ? [spot.label] : []))
      for (const [i, one] of labels.entries())
        for (const other of labels.slice(i + 1))
          if (one.row === other.row) expect(one.toX <= other.fromX || other.toX <= one.fromX).toBe(true)
    }),
    { numRuns: 200 },
  )
})
