import { Refusal } from '../refusal.ts'

/**
 * Units a shop meets, each as an exact decimal in its dimension's base, or a pair of decimals where the factor is a
 * quotient. All follow from the inch (25.4 mm), the US gallon (231 cubic inches), the imperial gallon (4.546 09 L), the
 * pound (0.453 592 37 kg) and standard gravity (9.806 65 m/s²), which are exact.
 * Source: NIST Special Publication 811, appendix B.8; NIST Handbook 44, appendix C (definitions from memory).
 */
const factors = {
  volume: {
    mL: '1',
    L: '1000',
    m3: '1000000',
    'cubic inch': '16.387064',
    'US teaspoon': ['29.5735295625', '6'],
    'US fluid ounce': '29.5735295625',
    'US pint': '473.176473',
    'US quart': '946.352946',
    'US gallon': '3785.411784',
    'imperial fluid ounce': '28.4130625',
    'imperial pint': '568.26125',
    'imperial quart': '1136.5225',
    'imperial gallon': '4546.09',
  },
  mass: { g: '1', mg: '0.001', kg: '1000', ounce: '28.349523125', pound: '453.59237' },
  length: {
    m: '1',
    um: '0.000001',
    mm: '0.001',
    cm: '0.01',
    km: '1000',
    mil: '0.0000254',
    inch: '0.0254',
    foot: '0.3048',
    yard: '0.9144',
    mile: '1609.344',
  },
  area: {
    m2: '1',
    cm2: '0.0001',
    'square inch': '0.00064516',
    'square foot': '0.09290304',
    'square yard': '0.83612736',
  },
  pressure: {
    Pa: '1',
    hPa: '100',
    kPa: '1000',
    bar: '100000',
    psi: ['4.4482216152605', '0.00064516'],
  },
  speed: { 'm/s': '1', 'km/h': ['1', '3.6'], 'mile per hour': '0.44704' },
  arealMass: {
    'g/m2': '1',
    'mg/cm2': '10',
    'ounce per square yard': ['28.349523125', '0.83612736'],
  },
} as const satisfies Record<string, Record<string, string | readonly [string, string]>>

export type Dimension = keyof typeof factors
export type Unit = { [D in Dimension]: keyof (typeof factors)[D] & string }[Dimension]

/** Other names under which a unit is asked for. */
const aliases: Readonly<Record<string, Unit>> = {
  millilitre: 'mL',
  milliliter: 'mL',
  ml: 'mL',
  litre: 'L',
  liter: 'L',
  l: 'L',
  'fl oz': 'US fluid ounce',
  'US fl oz': 'US fluid ounce',
  'US liquid pint': 'US pint',
  'US liquid quart': 'US quart',
  gal: 'US gallon',
  'imp fl oz': 'imperial fluid ounce',
  gram: 'g',
  kilogram: 'kg',
  oz: 'ounce',
  'ounce (mass)': 'ounce',
  lb: 'pound',
  metre: 'm',
  meter: 'm',
  millimetre: 'mm',
  centimetre: 'cm',
  micrometre: 'um',
  micrometer: 'um',
  micron: 'um',
  // The Greek letter; the micro sign becomes it, and m² becomes m2, when a word is normalised.
  μm: 'um',
  in: 'inch',
  ft: 'foot',
  yd: 'yard',
  'square metre': 'm2',
  'square centimetre': 'cm2',
  kilopascal: 'kPa',
  mph: 'mile per hour',
  'kilometre per hour': 'km/h',
  'gram per square metre': 'g/m2',
  'milligram per square centimetre': 'mg/cm2',
}

interface Factor {
  readonly dimension: Dimension
  readonly numerator: bigint
  readonly denominator: bigint
}

const factorOf: ReadonlyMap<string, Factor> = new Map(
  Object.entries(factors).flatMap(([dimension, units]) =>
    Object.entries<string | readonly [string, string]>(units).map(([unit, factor]) => {
      const [top, bottom] = typeof factor === 'string' ? [factor, '1'] : factor
      const [a, b] = [ratio(top), ratio(bottom)]
      const numerator = a.numerator * b.denominator
      return [
        unit,
        { dimension: dimension as Dimension, numerator, denominator: a.denominator * b.numerator },
      ]
    }),
  ),
)

function ratio(decimal: string): { numerator: bigint; denominator: bigint } {
  const [whole, fraction = ''] = decimal.split('.')
  return { numerator: BigInt(whole + fraction), denominator: 10n ** BigInt(fraction.length) }
}

/** The unit a word stands for. Refuses a word that is none, or that is none of ours. */
export function unitNamed(word: string, field = 'unit'): Unit {
  const plain = word.normalize('NFKC').trim()
  const unit = factorOf.has(plain) ? (plain as Unit) : aliases[plain]
  if (!unit)
    throw new Refusal(
      'unit-unknown',
      field,
      word,
      `"${word}" is not a unit we convert; use one such as mL, US fluid ounce, g, ounce, um or mil.`,
    )
  return unit
}

/** What a unit measures. */
export function dimensionOf(unit: Unit): Dimension {
  return factorOf.get(unit)!.dimension
}

/**
 * `value` in another unit of the same dimension. The factor is an exact fraction in lowest terms, so that the result is
 * off by rounding only, about 3 parts in 10^16.
 * Source: NIST Special Publication 811, appendix B.8.
 *
 * @example convert(16, 'US fluid ounce', 'mL') // 473.176473
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (!Number.isFinite(value))
    throw new Refusal('value-not-finite', 'value', value, `${value} is not a quantity; give a plain number.`)
  const source = factorOf.get(from)!
  const target = factorOf.get(to)!
  if (source.dimension !== target.dimension)
    throw new Refusal(
      'units-differ',
      'to',
      to,
      `${from} measures ${source.dimension}, ${to} measures ${target.dimension}; they do not convert.`,
    )
  const numerator = source.numerator * target.denominator
  const denominator = source.denominator * target.numerator
  const common = greatestCommonDivisor(numerator, denominator)
  return (value * Number(numerator / common)) / Number(denominator / common)
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b)
}
