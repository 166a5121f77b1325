// NIST Special Publication 811, 16 CFR 500.19; label sizes and dilution language: common practice, no source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  concentrateShare,
  mixFromConcentrate,
  mixTotal,
  ratioMixed,
  ratioOfOuncesPerGallon,
  readRatio,
} from '../../../main/domain/measure/dilution.ts'
import { celsiusOf, fahrenheitOf } from '../../../main/domain/measure/index.ts'
import { labelSize } from '../../../main/domain/measure/labelSize.ts'
import { differenceFahrenheitOf } from '../../../main/domain/measure/temperature.ts'
import { convert, type Unit } from '../../../main/domain/measure/units.ts'
import { Refusal } from '../../../main/domain/refusal.ts'
import { type Case, expectNear, runCases } from '../../reference/cases.ts'

const firstSet = [
  [/^unit-/, 'convert'],
  [/^fahrenheit-/, 'temperature'],
  [/^nominal-/, 'label-size'],
  [/^dilution-/, 'dilution'],
] as const

/** The published tables' longer names for some of our units. */
const spelledOut: Readonly<Record<string, Unit>> = {
  'ounce (mass)': 'ounce',
  'US liquid pint': 'US pint',
  'US liquid quart': 'US quart',
  'gram per square metre': 'g/m2',
}
const unit = (word: string) => spelledOut[word] ?? (word as Unit)

runCases('units', firstSet, {
  convert: (entry: Case<{ value: number; from: string; to: string }, { value: number }>) => {
    const { value, from, to } = entry.input
    expectNear(convert(value, unit(from), unit(to)), entry.expected.value, entry.tolerance)
  },

  temperature: (
    entry: Case<{ celsius?: number; fahrenheit?: number }, { celsius?: number; fahrenheit?: number }>,
  ) => {
    const { input, expected, tolerance } = entry
    if (input.fahrenheit !== undefined) expectNear(celsiusOf(input.fahrenheit), expected.celsius!, tolerance)
    else expectNear(fahrenheitOf(input.celsius!), expected.fahrenheit!, tolerance)
  },

  'temperature-difference': (entry: Case<{ differenceC: number }, { differenceF: number }>) => {
    const { differenceC } = entry.input
    expectNear(differenceFahrenheitOf(differenceC), entry.expected.differenceF, entry.tolerance)
  },

  'label-size': (entry: Case<{ labelFlOz: number; soldAsMl?: number }, Record<string, number>>) => {
    const { soldAsMl: expectedSize, ...expected } = entry.expected
    const result: Record<string, number> = {
      ...labelSize(entry.input.labelFlOz, entry.input.soldAsMl ?? expectedSize!),
    }
    for (const [name, value] of Object.entries(expected)) expectNear(result[name]!, value, entry.tolerance)
  },

  dilution: (
    entry: Case<
      { ratio: string; totalMl: number },
      { onePartPlusParts_concentrateMl: number; onePartIn_concentrateMl: number } & Record<
        'added' | 'inTotal',
        { concentrateMl: number; waterMl: number } | undefined
      >
    >,
  ) => {
    const { expected, tolerance } = entry
    const ratio = readRatio(entry.input.ratio)
    for (const reading of ['added', 'inTotal'] as const) {
      const mixture = mixTotal(ratio, entry.input.totalMl, reading)
      const first =
        reading === 'added' ? expected.onePartPlusParts_concentrateMl : expected.onePartIn_concentrateMl
      expectNear(mixture.concentrateMl, expected[reading]?.concentrateMl ?? first, tolerance)
      if (expected[reading]) expectNear(mixture.waterMl, expected[reading].waterMl, tolerance)
    }
  },

  'dilution-ounces-per-gallon': (
    entry: Case<
      { concentrateFlOz: number; waterGallons: number },
      { addedRatio: string; concentrateFraction: number }
    >,
  ) => {
    const mixed = ratioOfOuncesPerGallon(entry.input.concentrateFlOz, entry.input.waterGallons)
    expect(mixed.addedRatio).toBe(entry.expected.addedRatio)
    expectNear(mixed.concentrateFraction, entry.expected.concentrateFraction, entry.tolerance)
  },
})

const byDimension: Unit[][] = [
  ['mL', 'L', 'US teaspoon', 'US fluid ounce', 'US gallon', 'imperial gallon'],
  ['g', 'ounce', 'pound'],
  ['um', 'mil', 'inch', 'mile'],
  ['psi', 'bar'],
  ['km/h', 'mile per hour'],
  ['g/m2', 'ounce per square yard'],
]
const pair = fc
  .constantFrom(...byDimension)
  .chain(units => fc.tuple(fc.constantFrom(...units), fc.constantFrom(...units)))

describe('conversion', () => {
  it('there and back gives the quantity again', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), pair, (value, [from, to]) => {
        expect(Math.abs(convert(convert(value, from, to), to, from) / value - 1)).toBeLessThan(1e-15)
      }),
    )
  })

  it('gives film thickness in mil: 25.4 µm to the mil, exact from the inch', () => {
    expect(convert(1, 'mil', 'um')).toBe(25.4)
    expect(convert(127, 'um', 'mil')).toBe(5)
  })

  it('keeps temperatures in order and undoes itself', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 2000, noNaN: true }), celsius => {
        expect(celsiusOf(fahrenheitOf(celsius))).toBeCloseTo(celsius, 9)
        expect(fahrenheitOf(celsius + 1)).toBeGreaterThan(fahrenheitOf(celsius))
      }),
    )
  })
})

describe('dilution', () => {
  const parts = fc.integer({ min: 1, max: 500 })
  it('answers both ways alike: so much mixture, so much concentrate', () => {
    fc.assert(
      fc.property(
        parts,
        parts,
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.constantFrom('added' as const, 'inTotal' as const),
        (a, b, totalMl, reading) => {
          const ratio = { concentrateParts: Math.min(a, b), otherParts: Math.max(a, b) }
          const mixture = mixTotal(ratio, totalMl, reading)
          expect(mixFromConcentrate(ratio, mixture.concentrateMl, reading).totalMl).toBeCloseTo(totalMl, 6)
          expect(mixture.concentrateMl + mixture.waterMl).toBeCloseTo(totalMl, 6)
          // Reading the ratio as parts added always makes the weaker mixture.
          expect(concentrateShare(ratio, 'added')).toBeLessThan(concentrateShare(ratio, 'inTotal'))
        },
      ),
    )
  })

  it('names the ratio somebody mixed', () => {
    expect(ratioMixed(100, 1000)).toEqual({ addedRatio: '1:10', concentrateFraction: 1 / 11 })
    expect(ratioMixed(30, 1000).addedRatio).toBe('1:33.33')
  })
})

describe('measure refuses', () => {
  const cases: [string, string, () => unknown][] = [
    ['units-differ', 'to', () => convert(1, 'mL', 'g')],
    ['value-not-finite', 'value', () => convert(Number.NaN, 'mL', 'L')],
    ['temperature-impossible', 'fahrenheit', () => celsiusOf(-460)],
    ['temperature-impossible', 'celsius', () => fahrenheitOf(Number.NaN)],
    ['ratio-bad', 'ratio', () => readRatio('ten to one')],
    ['ratio-bad', 'ratio', () => readRatio('1:0')],
    ['ratio-over-whole', 'ratio', () => mixTotal({ concentrateParts: 3, otherParts: 2 }, 100, 'inTotal')],
    ['volume-not-positive', 'totalMl', () => mixTotal({ concentrateParts: 1, otherParts: 2 }, 0, 'added')],
    ['volume-not-positive', 'waterMl', () => ratioMixed(1, Number.POSITIVE_INFINITY)],
    ['size-not-positive', 'labelFlOz', () => labelSize(0, 500)],
  ]
  it.each(cases)('%s in %s', (code, field, act) => {
    expect(act).toThrow(Refusal)
    try {
      act()
    } catch (error) {
      expect(error).toMatchObject({ code, field })
    }
  })
})
