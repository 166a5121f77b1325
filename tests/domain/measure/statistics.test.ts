// NIST StRD and e-Handbook, Hyndman and Fan 1996, ISO 5725-6, SSPC-PA 2, ISO 19840: see each case.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeArea, judgeNominal, spotLimits } from '../../../main/domain/measure/filmAcceptance.ts'
import { fitLine, fitThroughOrigin, type Point, predict, trendOf } from '../../../main/domain/measure/line.ts'
import { median } from '../../../main/domain/measure/median.ts'
import { momentsOf, sum } from '../../../main/domain/measure/moments.ts'
import { quantile } from '../../../main/domain/measure/quantile.ts'
import { differenceOf } from '../../../main/domain/measure/repeat.ts'
import { farOut, medianDeviation } from '../../../main/domain/measure/robust.ts'
import { tQuantile } from '../../../main/domain/measure/tQuantile.ts'
import { type Case, casesOf, expectNear, runCases } from '../../reference/cases.ts'

const firstSet = [
  [/^norris$/, 'line'],
  [/^numacc/, 'univariate-generated'],
  [/^spread-/, 'spread'],
  [/^repeatability-/, 'repeatability'],
  [/^quantile-/, 'quantile'],
  [/^wilson-/, 'wilson'],
] as const

type Figures = Readonly<Record<string, number>>
type Alternating = {
  first: number
  then_alternating?: number[]
  thenAlternating?: number[]
  pairs: number
  values?: number[]
}

const norris = (
  casesOf('statistics', firstSet).find(({ id }) => id === 'norris')!.input as { points: Point[] }
).points

function expectFigures(actual: object, expected: Figures, tolerance: string): void {
  for (const [name, value] of Object.entries(expected))
    expectNear((actual as Figures)[name]!, value, tolerance)
}

runCases('statistics', firstSet, {
  line: (entry: Case<{ points: Point[] }, Figures>) =>
    expectFigures(fitLine(entry.input.points), entry.expected, entry.tolerance),

  univariate: (entry: Case<{ values: number[] }, Figures>) =>
    expectFigures(momentsOf(entry.input.values), entry.expected, entry.tolerance),

  'univariate-generated': (entry: Case<Alternating, Figures>) => {
    const { first, pairs, values } = entry.input
    const [a, b] = entry.input.thenAlternating ?? entry.input.then_alternating ?? [0, 0]
    const all = values ?? [first, ...Array.from({ length: pairs }, () => [a!, b!]).flat()]
    const { lag1, ...rest } = entry.expected
    // The second set gives the spread its own tolerance in words.
    expectFigures(momentsOf(all), rest, entry.tolerance.replace(/^relative (\S+) for sd.*/, 'relative $1'))
    if (lag1 !== undefined) {
      expectNear(momentsOf(all).lag1, lag1, 'absolute 1e-7')
      expectNear(momentsOf(all).mean, rest.mean!, 'relative 1e-12')
    }
  },

  spread: (entry: Case<{ values: number[] }, { farOut: number[] } & Figures>) => {
    const { values } = entry.input
    const { mean, sd } = momentsOf(values)
    expectNear(mean, entry.expected.mean!, entry.tolerance)
    expectNear(sd, entry.expected.sd!, entry.tolerance)
    expectNear(median(values), entry.expected.median!, entry.tolerance)
    expectNear(medianDeviation(values), entry.expected.mad!, entry.tolerance)
    expect(values.filter((_, i) => farOut(values)[i])).toEqual(entry.expected.farOut)
  },

  repeatability: (
    entry: Case<{ before: number; after: number; repeatabilitySd: number }, { limit: number; real: boolean }>,
  ) => {
    const { before, after, repeatabilitySd } = entry.input
    expect(differenceOf(after - before, repeatabilitySd)).toMatchObject(entry.expected)
  },

  'critical-difference': (entry: Case<Figures, { criticalDifference: number; real: boolean }>) => {
    const { repeatabilitySd, n1, n2, meanDifference } = entry.input
    const found = differenceOf(meanDifference!, repeatabilitySd!, { before: n1!, after: n2! })
    expectNear(found.limit, entry.expected.criticalDifference, entry.tolerance)
    expect(found.real).toBe(entry.expected.real)
  },

  quantile: (entry: Case<{ values: number[]; p: number }, { quantile: number }>) =>
    expectNear(quantile(entry.input.values, entry.input.p), entry.expected.quantile, entry.tolerance),

  'line-through-origin': (entry: Case<{ points: Point[] }, Figures>) =>
    expectFigures(fitThroughOrigin(entry.input.points), entry.expected, entry.tolerance),

  'line-prediction': (entry: Case<{ x: number }, Figures>) => {
    const { expected, tolerance } = entry
    const found = predict(fitLine(norris), entry.input.x)
    expectNear(found.y, expected.y!, tolerance)
    expectNear(found.mean.low, expected.meanLow95!, tolerance)
    expectNear(found.mean.high, expected.meanHigh95!, tolerance)
    expectNear(found.next.low, expected.newLow95!, tolerance)
    expectNear(found.next.high, expected.newHigh95!, tolerance)
    expectNear(tQuantile(0.975, norris.length - 2), expected.tQuantile!, tolerance)
  },

  'theil-sen': (entry: Case<{ points: Point[] }, { slope: number; interceptMedianResidual: number }>) => {
    const found = trendOf(entry.input.points)
    expectNear(found.slope, entry.expected.slope, entry.tolerance)
    expectNear(found.intercept, entry.expected.interceptMedianResidual, entry.tolerance)
  },

  'spot-limits': (entry: Case<Figures, Figures>) => {
    const limits = spotLimits(entry.input.specifiedMinMil!, entry.input.specifiedMaxMil!)
    expectNear(limits.least, entry.expected.spotMinMil!, entry.tolerance)
    expectNear(limits.most, entry.expected.spotMaxMil!, entry.tolerance)
  },

  'area-acceptance': (
    entry: Case<
      { spotReadingsUm: number[][]; specifiedMinUm: number; specifiedMaxUm: number },
      { spots: number[]; areaMean: number; spotsPass: boolean; areaPass: boolean }
    >,
  ) => {
    const { spotReadingsUm, specifiedMinUm, specifiedMaxUm } = entry.input
    const { spots, areaMean, spotsPass, areaPass } = judgeArea(spotReadingsUm, specifiedMinUm, specifiedMaxUm)
    for (const [i, um] of spots.entries()) expectNear(um, entry.expected.spots[i]!, entry.tolerance)
    expectNear(areaMean, entry.expected.areaMean, entry.tolerance)
    expect({ spotsPass, areaPass }).toEqual({
      spotsPass: entry.expected.spotsPass,
      areaPass: entry.expected.areaPass,
    })
  },

  'nominal-thickness-80-20': (
    entry: Case<
      { readingsUm: number[]; nominalUm: number },
      { mean: number; allAtLeast80Percent: boolean; belowNominalShare: number; accepted: boolean }
    >,
  ) => {
    const { mean, belowNominalShare, ...flags } = judgeNominal(entry.input.readingsUm, entry.input.nominalUm)
    expectNear(mean, entry.expected.mean, 'absolute 1e-9')
    expectNear(belowNominalShare, entry.expected.belowNominalShare, 'absolute 1e-12')
    expect(flags).toEqual({
      allAtLeast80Percent: entry.expected.allAtLeast80Percent,
      accepted: entry.expected.accepted,
    })
  },
})

const someNumbers = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 40 })

describe('laws', () => {
  it('a shift moves the mean and leaves the spread', () => {
    fc.assert(
      fc.property(someNumbers, fc.double({ min: -1e6, max: 1e6, noNaN: true }), (values, by) => {
        const moved = momentsOf(values.map(value => value + by))
        const { mean, sd } = momentsOf(values)
        expect(moved.mean).toBeCloseTo(mean + by, 4)
        expect(moved.sd).toBeCloseTo(sd, 4)
        expect(sum(values)).toBeCloseTo(mean * values.length, 3)
      }),
    )
  })

  it('a quantile lies within the values and rises with its share', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(someNumbers, share, share, (values, p, q) => {
        const [low, high] = [quantile(values, Math.min(p, q)), quantile(values, Math.max(p, q))]
        expect(low).toBeGreaterThanOrEqual(Math.min(...values))
        expect(high).toBeGreaterThanOrEqual(low)
        expect(high).toBeLessThanOrEqual(Math.max(...values))
        expect(quantile(values, 0.5)).toBeCloseTo(median(values), 6)
      }),
    )
  })

  it('a line through points of a line is that line, whatever the order; a trend shrugs off one wild reading', () => {
    const line = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }))
    fc.assert(
      fc.property(line, fc.integer({ min: 0, max: 8 }), ([a, b], wild) => {
        const points = Array.from({ length: 9 }, (_, i): Point => [i, a + b * i])
        const fit = fitLine(points)
        expect([fit.intercept, fit.slope]).toEqual([expect.closeTo(a, 8), expect.closeTo(b, 8)])
        expect(predict(fit, 20).y).toBeCloseTo(a + 20 * b, 7)
        const bent = points.map(([x, y], i): Point => (i === wild ? [x, y + 1e6] : [x, y]))
        expect(trendOf(bent).slope).toBeCloseTo(b, 8)
      }),
    )
  })

  it('Student’s t: its known quantiles, and the other side is its mirror', () => {
    // Tables: NIST/SEMATECH e-Handbook 1.3.6.7.2; one degree of freedom is tan(π(p − ½)) exactly.
    for (const [p, freedom, t] of [
      [0.975, 10, 2.228],
      [0.95, 30, 1.697],
      [0.9, 5, 1.476],
      [0.999, 3, 10.215],
    ] as const) {
      expect(tQuantile(p, freedom)).toBeCloseTo(t, 3)
      expect(tQuantile(1 - p, freedom)).toBeCloseTo(-t, 3)
    }
    expect(tQuantile(0.99, 1)).toBeCloseTo(Math.tan(Math.PI * 0.49), 8)
    expect(tQuantile(0.975, 1e6)).toBeCloseTo(1.95996, 4)
    expect(tQuantile(0.5, 4)).toBe(0)
  })
})

describe('statistics refuse', () => {
  const cases: [string, string, () => unknown][] = [
    ['too-few', 'values', () => momentsOf([])],
    ['reading-bad', 'values.1', () => momentsOf([1, Number.NaN])],
    ['reading-bad', 'values.0', () => quantile([1e300], 0.5)],
    ['too-few', 'values', () => quantile([], 0.5)],
    ['share-bad', 'p', () => quantile([1], 1.2)],
    [
      'too-few',
      'points',
      () =>
        fitLine([
          [1, 2],
          [1, 3],
        ]),
    ],
    ['too-few', 'points', () => fitThroughOrigin([[0, 3]])],
    [
      'too-few',
      'points',
      () =>
        predict(
          fitLine([
            [1, 2],
            [2, 3],
          ]),
          3,
        ),
    ],
    [
      'reading-bad',
      'points.0.1',
      () =>
        fitLine([
          [1, Number.POSITIVE_INFINITY],
          [2, 2],
        ]),
    ],
    [
      'too-few',
      'points',
      () =>
        trendOf([
          [1, 2],
          [1, 3],
        ]),
    ],
    ['too-many', 'points', () => trendOf(Array.from({ length: 501 }, (_, i): Point => [i, i]))],
    ['not-positive', 'repeatabilitySd', () => differenceOf(1, 0)],
    ['count-bad', 'after', () => differenceOf(1, 1, { before: 1, after: 0 })],
    ['too-few', 'spotReadings', () => judgeArea([], 90, 130)],
    ['range-bad', 'most', () => spotLimits(12, 8)],
    ['not-positive', 'nominal', () => judgeNominal([100], 0)],
    ['too-few', 'values', () => judgeNominal([], 100)],
    ['share-bad', 'p', () => tQuantile(1, 3)],
    ['too-few', 'freedom', () => tQuantile(0.9, 0)],
  ]
  it.each(cases)('%s in %s', (code, field, act) => {
    expect(act).toThrow(expect.objectContaining({ code, field }))
  })
})
