import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastCover, varianceOf } from '../../../main/domain/shelf/chances.ts'
import type { PastDraw } from '../../../main/domain/shelf/demand.ts'
import { estimateLevel, learnDemand, meanOf, useAhead } from '../../../main/domain/shelf/index.ts'
import { patternOf, teunterSyntetosBabai } from '../../../main/domain/shelf/intermittent.ts'
import { pick, poissonDraw, seeded } from '../../bench/simulation/random.ts'

const walkIn = (usedOn: number, centi: number): PastDraw => ({
  usedOn,
  knownOn: null,
  centi,
  expectedCenti: null,
})
const booked = (usedOn: number, notice: number, centi: number): PastDraw => ({
  usedOn,
  knownOn: usedOn - notice,
  centi,
  expectedCenti: centi,
})

/** A year of draws, some booked a few days ahead. */
const history = (seed: number, days: number) => {
  const random = seeded(seed)
  const draws: PastDraw[] = []
  for (let day = 0; day < days; day++) {
    for (let n = poissonDraw(random, 0.3); n > 0; n--)
      draws.push(
        walkIn(
          day,
          pick(random, [
            [300, 2],
            [900, 1],
          ]),
        ),
      )
    for (let n = poissonDraw(random, 0.4); n > 0; n--)
      draws.push(
        booked(
          day,
          pick(random, [
            [1, 1],
            [4, 2],
            [9, 1],
          ]),
          pick(random, [
            [600, 1],
            [1200, 1],
          ]),
        ),
      )
  }
  return { from: 0, to: days, draws }
}

describe('learned demand', () => {
  it('takes as unforeseen on the k-th day only what was known less than k days ahead', () => {
    const draws = [walkIn(3, 300), booked(5, 1, 300), booked(7, 3, 300), booked(8, 6, 300)]
    const demand = learnDemand({ from: 0, to: 10, draws }, { stepCenti: 100, horizon: 8 })
    const daily = demand.aheadMeanCenti.map((mean, k) => (k === 0 ? 0 : mean - demand.aheadMeanCenti[k - 1]!))
    const expected = [0, 30, 60, 60, 90, 90, 90, 120, 120]
    daily.forEach((mean, k) => {
      expect(mean).toBeCloseTo(expected[k]!, 9)
    })
    expect(demand.unforeseenShare).toEqual([0, 0.25, 0.5, 0.5, 0.75, 0.75, 0.75, 1, 1])
    expect(demand.perDayCenti).toBeCloseTo(120, 9)
  })

  it('is the limit of a bootstrap of the days', () => {
    const { draws, ...span } = history(5, 3000)
    const horizon = 6
    const demand = learnDemand({ ...span, draws }, { stepCenti: 150, horizon })
    // The bootstrap: a past day for each day ahead, drawn anew, with what was unforeseen that many days before it.
    const unforeseen = Array.from({ length: horizon + 1 }, () => new Float64Array(span.to))
    for (const draw of draws)
      for (let k = 1; k <= horizon; k++)
        if (draw.knownOn === null || draw.usedOn - draw.knownOn < k)
          unforeseen[k]![draw.usedOn]! += draw.centi
    const random = seeded(9)
    const sums = Array.from({ length: 20_000 }, () => {
      let sum = 0
      for (let k = 1; k <= horizon; k++) sum += unforeseen[k]![Math.floor(random() * span.to)]!
      return sum
    }).sort((a, b) => a - b)
    for (const share of [0.5, 0.8, 0.95, 0.99]) {
      const bootstrap = sums[Math.floor(share * sums.length)]!
      expect(Math.abs(leastCover(demand.ahead[horizon]!, share) * 150 - bootstrap)).toBeLessThanOrEqual(150)
    }
  })

  it('trusts a thin history less than a long one of the same habits', () => {
    const wide = learnDemand(history(3, 120), { stepCenti: 150, horizon: 10 })
    const narrow = learnDemand(history(3, 2400), { stepCenti: 150, horizon: 10 })
    const relative = (demand: typeof wide) => varianceOf(demand.ahead[10]!) / meanOf(demand.ahead[10]!) ** 2
    expect(relative(wide)).toBeGreaterThan(1.1 * relative(narrow))
  })

  it('keeps the mean whatever the step', () => {
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 500 }), stepCenti => {
        const demand = learnDemand(history(11, 400), { stepCenti, horizon: 3 })
        const mean = history(11, 400).draws.reduce((sum, draw) => sum + draw.centi, 0) / 400
        expect(demand.perDayCenti).toBeCloseTo(mean, 6)
      }),
      { numRuns: 20 },
    )
  })

  it('widens by what booked draws missed their recipe by', () => {
    const exact = Array.from({ length: 100 }, (_, day) => booked(day, 5, 1000))
    const missed = exact.map((draw, i) => ({ ...draw, centi: i % 2 === 0 ? 800 : 1200 }))
    const [sure, unsure] = [exact, missed].map(draws =>
      learnDemand({ from: 0, to: 100, draws }, { stepCenti: 100, horizon: 4 }),
    )
    expect(varianceOf(sure!.ahead[4]!)).toBe(0)
    expect(varianceOf(unsure!.ahead[4]!)).toBeGreaterThan(1)
  })

  it('goes on at the last day’s pace where it did not look ahead', () => {
    const demand = learnDemand(history(3, 500), { stepCenti: 150, horizon: 10 })
    const use = useAhead(demand, 30)
    const step = demand.aheadMeanCenti[10]! - demand.aheadMeanCenti[9]!
    expect(use.meanCenti[30]! - use.meanCenti[20]!).toBeCloseTo(10 * step, 6)
    for (let k = 1; k <= 30; k++) expect(use.variance[k]!).toBeGreaterThanOrEqual(use.variance[k - 1]!)
  })

  it('needs a day to look at', () => {
    expect(() => learnDemand({ from: 5, to: 5, draws: [] }, { stepCenti: 1, horizon: 1 })).toThrow(/no day/)
  })
})

describe('the level of use', () => {
  const steady = (seed: number, weeks: number, mean: number) => {
    const random = seeded(seed)
    return Array.from({ length: weeks }, () => poissonDraw(random, mean) * 100)
  }

  it('is the mean while use is steady', () => {
    const methods = [1, 2, 3, 4, 5, 6, 7, 8].map(seed => estimateLevel(steady(seed, 104, 2)).method)
    expect(methods.filter(method => method === 'mean').length).toBeGreaterThanOrEqual(7)
  })

  it('fades with a product nobody asks for any more, where Croston’s stays', () => {
    const series = [...steady(4, 70, 1.5), ...new Array<number>(60).fill(0)]
    const level = estimateLevel(series)
    expect(level.method).toBe('fading')
    expect(level.factor).toBeLessThan(0.3)
    expect(teunterSyntetosBabai(series, 0.1, 0.05)!.perPeriod).toBeLessThan(15)
  })

  it('follows a change of pace upwards', () => {
    const series = [...steady(4, 60, 0.5), ...steady(5, 60, 4)]
    expect(estimateLevel(series).perPeriod).toBeGreaterThan(300)
  })

  it('says nothing of a short series but its mean', () => {
    expect(estimateLevel([])).toMatchObject({ method: 'mean', perPeriod: 0, factor: 1, misses: null })
    expect(estimateLevel([100, 0, 200])).toMatchObject({ perPeriod: 100, factor: 1, misses: null })
  })

  it('names the pattern by the published cut-offs', () => {
    expect(patternOf([5, 5, 4, 5, 6, 5]).pattern).toBe('smooth')
    expect(patternOf([1, 9, 1, 1, 12, 1]).pattern).toBe('erratic')
    expect(patternOf([0, 0, 5, 0, 5, 0, 0, 4]).pattern).toBe('intermittent')
    expect(patternOf([0, 0, 1, 0, 20, 0, 0, 2]).pattern).toBe('lumpy')
    expect(patternOf([0, 0]).pattern).toBe('none')
  })
})
