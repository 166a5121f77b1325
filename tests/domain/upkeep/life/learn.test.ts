import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitLife } from '../../../../main/domain/upkeep/life/fit.ts'
import { learnLife, type ObservedLife } from '../../../../main/domain/upkeep/life/learn.ts'
import { ageAtSurvival, conditionalAge } from '../../../../main/domain/upkeep/life/weibull.ts'
import { aPrior, dayOf, lives } from './arbitraries.ts'
import { weibullThrough } from './weibullThrough.ts'

const sheet = { age: 180, level: 0.9, shape: 2.5, ageSpread: 0.35, shapeSpread: 0.35 }
const level = fc.constantFrom(0.7, 0.8, 0.9, 0.95)

/** A small seeded generator of uniform numbers (Lehmer 1951, multiplier 48271), for samples of known lives. */
function uniform(seed: number) {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** `n` lives of a known Weibull, each looked at every `every` days up to `looks` times. */
function sample(
  n: number,
  life: { shape: number; scale: number },
  every: number,
  looks: number,
  seed: number,
) {
  const random = uniform(seed)
  return Array.from({ length: n }, (): ObservedLife => {
    const end = life.scale * (-Math.log(random())) ** (1 / life.shape)
    const phase = Math.floor(random() * every)
    const inspections = []
    for (let i = 1; i <= looks; i++) {
      const age = i * every - phase
      if (age <= 0) continue
      inspections.push({ age, working: end > age, on: dayOf(age) })
      if (end <= age) break
    }
    return { inspections }
  })
}

describe('learning a life', () => {
  it('gives the prior back while nothing was seen', () => {
    fc.assert(
      fc.property(aPrior, level, (prior, at) => {
        const learned = learnLife([], prior, at)
        const believed = weibullThrough(prior.age, prior.level, prior.shape)
        expect(learned.renewAge / ageAtSurvival(believed, at)).toBeCloseTo(1, 9)
        expect(learned.life.shape).toBeCloseTo(prior.shape, 9)
        expect(learned).toMatchObject({ priorWeight: 1, lives: 0, ended: 0, shapeSettledOn: null })
      }),
    )
  })

  it('never shortens a life for a look that later finds one still working', () => {
    fc.assert(
      fc.property(
        lives,
        aPrior,
        level,
        fc.array(fc.integer({ min: 1, max: 2000 }), { minLength: 1, maxLength: 4 }),
        (seen, prior, at, ages) => {
          const before = learnLife(seen, prior, at)
          // Every day in `lives` lies before this one.
          const added = ages.map((age, i) => ({ inspections: [{ age, working: true, on: dayOf(3000 + i) }] }))
          const after = learnLife([...seen, ...added], prior, at)
          expect(after.renewAge).toBeGreaterThanOrEqual(before.renewAge * (1 - 1e-9))
          for (const share of [0.5, 0.99])
            expect(ageAtSurvival(after.life, share)).toBeGreaterThanOrEqual(
              ageAtSurvival(before.life, share) * (1 - 1e-9),
            )
        },
      ),
      { numRuns: 300 },
    )
  })

  it('never shortens a life when one seen working is seen working again, older', () => {
    fc.assert(
      fc.property(lives, aPrior, fc.nat(), fc.integer({ min: 1, max: 1500 }), (seen, prior, pick, more) => {
        const working = seen.filter(life => life.inspections.every(look => look.working))
        fc.pre(working.length > 0)
        const chosen = working[pick % working.length]!
        const age = chosen.inspections.at(-1)!.age + more
        const later = { inspections: [...chosen.inspections, { age, working: true, on: dayOf(3000) }] }
        const after = learnLife(
          seen.map(life => (life === chosen ? later : life)),
          prior,
        )
        expect(after.renewAge).toBeGreaterThanOrEqual(learnLife(seen, prior).renewAge * (1 - 1e-9))
      }),
      { numRuns: 300 },
    )
  })

  it('is why the two strokes are needed: one stroke shortens the life for good news', () => {
    const seen = [
      { from: 90, to: 180, count: 2 },
      { from: 180, to: 270, count: 6 },
      { from: 270, to: 360, count: 6 },
    ]
    const before = ageAtSurvival(fitLife(seen, { prior: sheet }).life, 0.9)
    const after = ageAtSurvival(fitLife([...seen, { from: 900, to: null }], { prior: sheet }).life, 0.9)
    expect(after).toBeLessThan(before * 0.9)
  })

  it('never lengthens a life for one more found gone at its first look, with the shape held', () => {
    fc.assert(
      fc.property(lives, aPrior, fc.integer({ min: 20, max: 900 }), (seen, prior, age) => {
        const readings = seen.flatMap(life => learnLife([life], prior).readings)
        const shape = prior.shape
        const before = fitLife(readings, { prior, shape }).life
        const after = fitLife([...readings, { from: 0, to: age }], { prior, shape }).life
        expect(after.scale).toBeLessThanOrEqual(before.scale * (1 + 1e-9))
      }),
    )
  })

  it('lets go of the prior among many readings: a wrong one is forgotten', () => {
    const truth = { shape: 1.8, scale: 700 }
    const wrong = { ...sheet, age: 90, shape: 3.5 }
    let apart = Number.POSITIVE_INFINITY
    let weight = 1
    for (const n of [10, 100, 1000, 10_000]) {
      const seen = sample(n, truth, 120, 12, 20260415)
      const learned = learnLife(seen, wrong)
      const alone = ageAtSurvival(fitLife(learned.readings).life, 0.9)
      const gap = Math.abs(Math.log(learned.renewAge / alone))
      expect(learned.priorWeight).toBeLessThan(weight)
      expect(gap).toBeLessThan(apart)
      apart = gap
      weight = learned.priorWeight
    }
    expect(apart).toBeLessThan(0.01)
    expect(weight).toBeLessThan(0.01)
  })

  it('finds a known life again from many readings', () => {
    const truth = { shape: 2.2, scale: 520 }
    const learned = learnLife(sample(20_000, truth, 90, 14, 7), sheet)
    expect(learned.renewAge / ageAtSurvival(truth, 0.9)).toBeCloseTo(1, 1)
    expect(learned.life.shape / truth.shape).toBeCloseTo(1, 1)
  })

  it('holds the true age in its range about as often as it says', () => {
    const truth = weibullThrough(200, 0.9, 2.5)
    let held = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { range } = learnLife(sample(60, truth, 90, 6, seed * 7919), {
        ...sheet,
        ageSpread: 3,
        shapeSpread: 3,
      })
      if (range.low <= 200 && (range.high === null || range.high >= 200)) held++
    }
    // 200 draws at 95 %: 190 expected, standard deviation 3.1; four of them either way.
    expect(held).toBeGreaterThanOrEqual(177)
    expect(held).toBeLessThanOrEqual(200)
  })

  it('gives a range that holds its age and narrows with readings', () => {
    fc.assert(
      fc.property(lives, aPrior, level, (seen, prior, at) => {
        const { range, renewAge } = learnLife(seen, prior, at)
        expect(range.low).toBeLessThanOrEqual(renewAge)
        expect(range.high ?? renewAge).toBeGreaterThanOrEqual(renewAge)
      }),
    )
    const width = (n: number) => {
      const { range } = learnLife(sample(n, { shape: 2.5, scale: 450 }, 90, 8, 3), sheet)
      return Math.log(range.high! / range.low)
    }
    expect(width(400)).toBeLessThan(width(20) / 2)
  })

  it('without readings ranges as far as the prior does', () => {
    const { range } = learnLife([], sheet)
    expect(Math.log(range.high! / 180)).toBeCloseTo(1.959964 * 0.35, 4)
    expect(Math.log(range.low / 180)).toBeCloseTo(-1.959964 * 0.35, 4)
  })

  it('names the life whose looks contradict each other', () => {
    const inspections = [
      { age: 100, working: false, on: '2026-04-11' },
      { age: 200, working: true, on: '2026-07-20' },
    ]
    expect(() => learnLife([{ inspections: [] }, { inspections }], sheet)).toThrow(
      expect.objectContaining({ code: 'working-after-gone', field: 'lives.1.inspections' }),
    )
  })
})

describe('the age for one car', () => {
  it('comes after the last look that found it working, and never earlier for a later one', () => {
    const life = fc.record({
      shape: fc.double({ min: 0.8, max: 6, noNaN: true }),
      scale: fc.double({ min: 50, max: 900, noNaN: true }),
    })
    const seen = fc.double({ min: 0, max: 2000, noNaN: true })
    fc.assert(
      fc.property(life, level, seen, seen, (curve, at, a, b) => {
        const [early, late] = a < b ? [a, b] : [b, a]
        expect(conditionalAge(curve, at, early)).toBeLessThanOrEqual(
          conditionalAge(curve, at, late) * (1 + 1e-12),
        )
        expect(conditionalAge(curve, at, late)).toBeGreaterThanOrEqual(late)
        expect(conditionalAge(curve, at, 0)).toBeCloseTo(ageAtSurvival(curve, at), 9)
      }),
    )
  })

  it.each([0, 1, -0.1, 1.5, Number.NaN])('refuses level %d', bad => {
    expect(() => conditionalAge({ shape: 2, scale: 100 }, bad, 0)).toThrow(/not a share between 0 and 1/)
  })
})
