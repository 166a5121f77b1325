// The Weibull distribution: NIST/SEMATECH e-Handbook 1.3.6.6.8.
import { expect, it } from 'vitest'
import { ageAtSurvival, conditionalAge, survival } from '../../../../main/domain/upkeep/life/weibull.ts'

const life = { shape: 2, scale: 100 }

it('leaves all at the start and 1/e at the scale, whatever the shape', () => {
  expect(survival(life, 0)).toBe(1)
  expect(survival(life, -1)).toBe(1)
  for (const shape of [0.5, 1, 3]) expect(survival({ shape, scale: 100 }, 100)).toBeCloseTo(Math.exp(-1), 12)
})

it('has the age of a share as the inverse of the share at an age', () => {
  for (const age of [1, 50, 100, 250]) expect(ageAtSurvival(life, survival(life, age))).toBeCloseTo(age, 9)
})

it('of one seen working counts the chance from there', () => {
  // S(age) / S(60) = 0.9, written out.
  const age = conditionalAge(life, 0.9, 60)
  expect(survival(life, age) / survival(life, 60)).toBeCloseTo(0.9, 12)
  expect(age).toBeGreaterThan(60)
})

it('without memory (shape 1) waits as long again', () => {
  const steady = { shape: 1, scale: 200 }
  expect(conditionalAge(steady, 0.8, 70) - 70).toBeCloseTo(ageAtSurvival(steady, 0.8), 9)
})

it.each([0, 1, -0.1, Number.NaN])('refuses the share %d', level => {
  expect(() => ageAtSurvival(life, level)).toThrow(expect.objectContaining({ code: 'level-bad' }))
})

it('refuses an age before the start', () => {
  expect(() => conditionalAge(life, 0.9, -1)).toThrow(expect.objectContaining({ code: 'age-bad' }))
})
