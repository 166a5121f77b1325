import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Refusal } from '../../../../main/domain/refusal.ts'
import { fitLife, type LifePrior, objectiveAt } from '../../../../main/domain/upkeep/life/fit.ts'
import type { LifeReading } from '../../../../main/domain/upkeep/life/reading.ts'
import { survival, type Weibull } from '../../../../main/domain/upkeep/life/weibull.ts'
import { aPrior, readings } from './arbitraries.ts'

/** The likelihood once more, written the plain way and sharing nothing with the fit. */
function plainLogLikelihood(data: readonly LifeReading[], life: Weibull): number {
  const density = (t: number) =>
    (life.shape / life.scale) * (t / life.scale) ** (life.shape - 1) * survival(life, t)
  return data.reduce((sum, { from, to, count = 1 }) => {
    const one =
      to === from
        ? density(from)
        : to === null
          ? survival(life, from)
          : survival(life, from) - survival(life, to)
    return sum + count * Math.log(one)
  }, 0)
}

function plainObjective(data: readonly LifeReading[], life: Weibull, prior: LifePrior): number {
  const age = life.scale * (-Math.log(prior.level)) ** (1 / life.shape)
  const z = Math.log(age / prior.age) / prior.ageSpread
  const y = Math.log(life.shape / prior.shape) / prior.shapeSpread
  return plainLogLikelihood(data, life) - (z * z + y * y) / 2
}

describe('the fit', () => {
  it('stands on the top: no neighbour by shape or scale is more likely', () => {
    fc.assert(
      fc.property(readings, aPrior, (data, prior) => {
        const { life } = fitLife(data, { prior })
        const best = plainObjective(data, life, prior)
        for (const [shape, scale] of [
          [1.01, 1],
          [0.99, 1],
          [1, 1.01],
          [1, 0.99],
          [1.01, 0.99],
          [0.99, 1.01],
          [1.3, 1],
          [0.7, 1],
          [1, 1.5],
          [1, 0.6],
        ] as const) {
          const near = { shape: life.shape * shape, scale: life.scale * scale }
          expect(plainObjective(data, near, prior)).toBeLessThanOrEqual(best + 1e-9 * Math.abs(best))
        }
      }),
    )
  })

  it('reports the log-likelihood of its own curve', () => {
    fc.assert(
      fc.property(readings, aPrior, (data, prior) => {
        const fit = fitLife(data, { prior })
        expect(fit.logLikelihood).toBeCloseTo(plainLogLikelihood(data, fit.life), 6)
        expect(fit.objective).toBeCloseTo(plainObjective(data, fit.life, prior), 6)
      }),
    )
  })

  it('has the derivatives it climbs by: they agree with differences', () => {
    const point = fc.record({
      logAge: fc.double({ min: 4, max: 6, noNaN: true }),
      logShape: fc.double({ min: -0.5, max: 1.4, noNaN: true }),
    })
    fc.assert(
      fc.property(readings, aPrior, point, (data, prior, at) => {
        const step = 1e-5
        const h = 0.2
        const here = objectiveAt(data, at, h, prior)
        const up = objectiveAt(data, { ...at, logAge: at.logAge + step }, h, prior)
        const down = objectiveAt(data, { ...at, logAge: at.logAge - step }, h, prior)
        const wide = objectiveAt(data, { ...at, logShape: at.logShape + step }, h, prior)
        const slim = objectiveAt(data, { ...at, logShape: at.logShape - step }, h, prior)
        const near = (a: number, b: number) =>
          expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-4 * (1 + Math.abs(here.value) + Math.abs(b)))
        near((up.value - down.value) / (2 * step), here.age)
        near((wide.value - slim.value) / (2 * step), here.shape)
        near((up.age - down.age) / (2 * step), here.ageAge)
        near((up.shape - down.shape) / (2 * step), here.ageShape)
        near((wide.age - slim.age) / (2 * step), here.ageShape)
        near((wide.shape - slim.shape) / (2 * step), here.shapeShape)
      }),
    )
  })

  it('does not care how lives are counted or in which unit ages are', () => {
    fc.assert(
      fc.property(readings, aPrior, fc.double({ min: 0.01, max: 100, noNaN: true }), (data, prior, unit) => {
        const { life } = fitLife(data, { prior })
        const oneByOne = data.flatMap(({ from, to, count = 1 }) =>
          Array.from({ length: count }, () => ({ from, to })),
        )
        const scaled = oneByOne.map(({ from, to }) => ({
          from: from * unit,
          to: to === null ? null : to * unit,
        }))
        const again = fitLife(scaled, { prior: { ...prior, age: prior.age * unit } }).life
        expect(again.shape / life.shape).toBeCloseTo(1, 6)
        expect(again.scale / life.scale / unit).toBeCloseTo(1, 6)
      }),
    )
  })

  it.each([
    ['nothing read', []],
    ['none seen to end', [{ from: 100, to: null, count: 12 }]],
    ['all ended between the same two looks', [{ from: 100, to: 200, count: 5 }]],
    ['one exact end', [{ from: 90, to: 90 }]],
  ])('refuses to guess without a prior: %s', (_, data) => {
    expect(() => fitLife(data)).toThrow(Refusal)
    expect(() => fitLife(data)).toThrow(/settle no life/)
  })

  it.each([
    [{ from: -1, to: null }, 'readings.0.from'],
    [{ from: Number.NaN, to: null }, 'readings.0.from'],
    [{ from: 10, to: 5 }, 'readings.0.to'],
    [{ from: 0, to: 0 }, 'readings.0.to'],
    [{ from: 1, to: 2, count: 0 }, 'readings.0.count'],
  ])('refuses readings that are none: %j', (reading, field) => {
    expect(() => fitLife([reading])).toThrow(expect.objectContaining({ field }))
  })
})
