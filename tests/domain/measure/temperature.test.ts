// NIST Special Publication 811, appendix B.8.
import { expect, it } from 'vitest'
import { celsiusOf, differenceFahrenheitOf, fahrenheitOf } from '../../../main/domain/measure/temperature.ts'

it.each([
  [-40, -40],
  [0, 32],
  [100, 212],
  [37, 98.6],
])('%d °C is %d °F', (celsius, fahrenheit) => {
  expect(fahrenheitOf(celsius)).toBeCloseTo(fahrenheit, 10)
  expect(celsiusOf(fahrenheit)).toBeCloseTo(celsius, 10)
})

it('a difference leaves the 32 out', () => {
  expect(differenceFahrenheitOf(5)).toBe(9)
})

it.each([-459.68, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d °F', fahrenheit => {
  expect(() => celsiusOf(fahrenheit)).toThrow(
    expect.objectContaining({ code: 'temperature-impossible', field: 'fahrenheit' }),
  )
})

it('takes absolute zero itself', () => {
  expect(celsiusOf(-459.67)).toBeCloseTo(-273.15, 10)
  expect(() => fahrenheitOf(-273.16)).toThrow('below absolute zero')
})
