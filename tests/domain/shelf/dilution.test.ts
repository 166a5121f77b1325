import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkDilution, concentrateFor, countBack } from '../../../main/domain/shelf/dilution.ts'

const waterParts = fc.double({ min: 0.1, max: 1_000, noNaN: true })
const draw = fc.record({
  centi: fc.integer({ min: 1, max: 90_000 }),
  sdCenti: fc.nat(5_000),
  day: fc.nat(20),
})
const draws = fc.array(draw, { maxLength: 12 }).map(list => list.sort((a, b) => a.day - b.day))
const batch = fc.record({
  centi: fc.nat(90_000),
  opened: fc.constant(true),
  lastDay: fc.option(fc.nat(20), { nil: null }),
})
const batches = fc
  .array(batch, { maxLength: 4 })
  .map(list => list.map((each, i) => ({ ...each, lotId: `lot ${i}` })))
const sum = (list: readonly { centi: number }[]) => list.reduce((total, each) => total + each.centi, 0)

test('A litre at 1:9 takes 100 ml of the concentrate', () => {
  expect(concentrateFor(100_000, { waterParts: 9 })).toBe(10_000)
  expect(concentrateFor(1, { waterParts: 500 })).toBe(1)
})

test('A batch takes its share to half a hundredth, and more for more', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10_000_000 }), fc.nat(1_000), waterParts, (made, more, parts) => {
      const taken = concentrateFor(made, { waterParts: parts })
      expect(taken).toBeLessThanOrEqual(made)
      if (taken > 1) expect(Math.abs(taken * (1 + parts) - made)).toBeLessThanOrEqual((1 + parts) / 2 + 1e-6)
      expect(concentrateFor(made + more, { waterParts: parts })).toBeGreaterThanOrEqual(taken)
    }),
  )
})

test('What batches serve and what is mixed make up every draw; more on the shelf never asks for more concentrate', () => {
  fc.assert(
    fc.property(draws, batches, waterParts, (coming, there, parts) => {
      const back = (holdings: typeof there) =>
        countBack(coming, holdings, { waterParts: parts }, each => each.day)
      const { served, toMix } = back(there)
      expect(sum(served)).toBeLessThanOrEqual(Math.min(sum(coming), sum(there)))
      const short = sum(coming) - sum(served)
      expect(Math.abs(sum(toMix) - short / (1 + parts))).toBeLessThanOrEqual(toMix.length)
      expect(sum(back([]).toMix)).toBeGreaterThanOrEqual(sum(toMix))
    }),
  )
})

test('A batch past its date serves nothing', () => {
  const old = [{ lotId: 'a', centi: 50_000, opened: true, lastDay: 3 }]
  const { served, toMix } = countBack([{ centi: 20_000, sdCenti: 1_000 }], old, { waterParts: 4 }, () => 4)
  expect(served).toEqual([])
  expect(toMix).toEqual([{ centi: 4_000, sdCenti: 200 }])
})

test.each([
  [{ waterParts: 0, lifeDays: 30 }, 'waterParts'],
  [{ waterParts: 1_001, lifeDays: 30 }, 'waterParts'],
  [{ waterParts: Number.NaN, lifeDays: 30 }, 'waterParts'],
  [{ waterParts: 9, lifeDays: 0 }, 'lifeDays'],
  [{ waterParts: 9, lifeDays: 1.5 }, 'lifeDays'],
])('%o is refused by its field', (dilution, field) => {
  expect(() => checkDilution(dilution)).toThrow(expect.objectContaining({ field }))
})
