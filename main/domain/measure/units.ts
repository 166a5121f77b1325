import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

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

/**
 * `value` in another unit of the same dimension. The factor is an exact fraction in lowest terms, so that the result is
 * off by rounding only, about 3 parts in 10^16.
 * Source: NIST Special Publication 811, appendix B.8.
 *
 * @example convert(16, 'US fluid ounce', 'mL') // 473.176473
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (!Number.isFinite(value))
    refuse('value-not-finite', { value }, say('{value} is not a quantity; give a plain number.', { value }))
  const source = factorOf.get(from)!
  const target = factorOf.get(to)!
  if (source.dimension !== target.dimension)
    refuse(
      'units-differ',
      { to },
      say('{from} measures {dimension}, {to} measures {dimension2}; they do not convert.', {
        from,
        dimension: source.dimension,
        to,
        dimension2: target.dimension,
      }),
    )
  const numerator = source.numerator * target.denominator
  const denominator = source.denominator * target.numerator
  const common = greatestCommonDivisor(numerator, denominator)
  return (value * Number(numerator / common)) / Number(denominator / common)
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b)
}
