import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { minorUnitsOf } from './currencies.ts'
import {
  type DecimalInput,
  divideRounded,
  type Rounding,
  readDecimal,
  rescale,
  tenTo,
  writeDecimal,
} from './decimal.ts'

/** Refuses an amount that is not a whole number of minor units a JavaScript number holds exactly. */
export function checkMinor(amountMinor: number, field: string): number {
  if (!Number.isSafeInteger(amountMinor))
    refuse(
      'amount-not-whole',
      { [field]: amountMinor },
      say(
        "{amountMinor} is not a whole number of the currency's smallest unit within ±9,007,199,254,740,991; round it first.",
        { amountMinor },
      ),
    )
  return amountMinor === 0 ? 0 : amountMinor
}

/** A BigInt result as a number, refused where a number could not hold it exactly. */
export function minorFromBigInt(amount: bigint, field: string): number {
  return checkMinor(Number(amount), field)
}

/**
 * An amount in major units ("12.34") as minor units (1234). More digits than the currency has are rounded when a
 * `rounding` is named and refused otherwise, so that no cent goes missing unasked.
 */
export function minorOf(
  amount: DecimalInput,
  currency: string,
  rounding?: Rounding,
  field = 'amount',
): number {
  const digits = minorUnitsOf(currency)
  const exact = readDecimal(amount, field)
  if (!rounding && exact.scale > digits && exact.units % tenTo(exact.scale - digits) !== 0n)
    refuse(
      'amount-too-fine',
      { [field]: amount },
      say('{amount} has more decimals than {currency} knows ({digits}); round it to {digits}.', {
        amount,
        currency,
        digits,
      }),
    )
  return minorFromBigInt(rescale(exact, digits, rounding ?? 'half-up'), field)
}

/** Minor units (1234) as a plain decimal in major units ("12.34"), with all the currency's digits and no grouping. */
export function majorOf(amountMinor: number, currency: string): string {
  return writeDecimal(BigInt(checkMinor(amountMinor, 'amountMinor')), minorUnitsOf(currency))
}

/** `amountMinor` × `factor`, exact until it is rounded once to a whole minor unit. */
export function timesMinor(
  amountMinor: number,
  factor: DecimalInput,
  rounding: Rounding = 'half-up',
): number {
  const by = readDecimal(factor, 'factor')
  const product = BigInt(checkMinor(amountMinor, 'amountMinor')) * by.units
  return minorFromBigInt(divideRounded(product, tenTo(by.scale), rounding), 'factor')
}

/** `amountMinor` × `percent` / 100, rounded once to a whole minor unit. */
export function percentOfMinor(
  amountMinor: number,
  percent: DecimalInput,
  rounding: Rounding = 'half-up',
): number {
  const rate = readDecimal(percent, 'percent')
  const product = BigInt(checkMinor(amountMinor, 'amountMinor')) * rate.units
  return minorFromBigInt(divideRounded(product, 100n * tenTo(rate.scale), rounding), 'percent')
}

/** The sum of amounts in one currency; refused where a number could not hold it exactly. */
export function sumMinor(amountsMinor: readonly number[]): number {
  const sum = amountsMinor.reduce((total, amount, i) => total + BigInt(checkMinor(amount, `${i}`)), 0n)
  return minorFromBigInt(sum, 'amounts')
}
