import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** A decimal as somebody typed it, "8.25", or a number whose shortest decimal form is meant, 8.25. */
export type DecimalInput = string | number

/** An exact decimal: `units` × 10^-`scale`. Kept inside the money files; BigInt does not travel as JSON. */
export interface Decimal {
  readonly units: bigint
  readonly scale: number
}

/** Half up: a tie goes away from zero (IEEE 754 roundTiesToAway). Half even: to the even neighbour (roundTiesToEven). */
export type Rounding = 'half-up' | 'half-even'

/** Reads a decimal exactly. Refuses anything but an optional sign, digits (30 at most on a side) and at most one point. */
export function readDecimal(input: DecimalInput, field: string): Decimal {
  const match = /^([+-]?)(\d{1,30})(?:\.(\d{1,30}))?$/.exec(
    typeof input === 'number' ? String(input) : input.trim(),
  )
  if (!match)
    refuse(
      'decimal-bad',
      { [field]: input },
      say('"{input}" is not a plain decimal; write digits with at most one point, such as 12.50.', { input }),
    )
  const [, sign, whole, fraction = ''] = match
  const magnitude = BigInt(whole! + fraction)
  return { units: sign === '-' ? -magnitude : magnitude, scale: fraction.length }
}

/** Ten to the power of a whole number of at least zero. */
export function tenTo(power: number): bigint {
  return 10n ** BigInt(power)
}

/** The whole number nearest to numerator / denominator (denominator above zero), ties as `rounding` says. */
export function divideRounded(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  const negative = numerator < 0n
  const magnitude = negative ? -numerator : numerator
  const quotient = magnitude / denominator
  const twice = 2n * (magnitude % denominator)
  const up =
    twice > denominator || (twice === denominator && (rounding === 'half-up' || quotient % 2n === 1n))
  const rounded = up ? quotient + 1n : quotient
  return negative ? -rounded : rounded
}

/** `value` counted in units of 10^-scale, rounded where it has more digits than that. */
export function rescale(value: Decimal, scale: number, rounding: Rounding): bigint {
  return scale >= value.scale
    ? value.units * tenTo(scale - value.scale)
    : divideRounded(value.units, tenTo(value.scale - scale), rounding)
}

/** Plain digits with `scale` decimals; zero carries no sign. */
export function writeDecimal(units: bigint, scale: number): string {
  const digits = (units < 0n ? -units : units).toString().padStart(scale + 1, '0')
  const cut = digits.length - scale
  const text = scale === 0 ? digits : `${digits.slice(0, cut)}.${digits.slice(cut)}`
  return units < 0n ? `-${text}` : text
}

/**
 * `value` rounded to a multiple of `step` ("0.01" for cents, "0.05" for cash, "1" for whole units), with as many
 * decimals as the step has. The step must be above zero.
 * Source: IEEE 754-2019 section 4.3.1 on decimal values.
 */
export function roundTo(value: DecimalInput, step: DecimalInput, rounding: Rounding = 'half-up'): string {
  const exact = readDecimal(value, 'value')
  const by = readDecimal(step, 'step')
  if (by.units <= 0n)
    refuse(
      'step-not-positive',
      { step },
      say('A rounding step of {step} is not above zero; use 0.01.', { step }),
    )
  const scale = Math.max(exact.scale, by.scale)
  const steps = divideRounded(
    exact.units * tenTo(scale - exact.scale),
    by.units * tenTo(scale - by.scale),
    rounding,
  )
  return writeDecimal(steps * by.units, by.scale)
}
