import { Refusal } from '../refusal.ts'
import { minorUnitsOf } from './currencies.ts'
import type { DecimalInput, Rounding } from './decimal.ts'
import { checkMinor, sumMinor, timesMinor } from './minor.ts'

/**
 * An amount with its currency: a whole number of the currency's smallest unit. Where the currency is written out in the
 * code, mixing two of them does not compile; where it is only known at run time, it is refused.
 */
export interface Money<C extends string = string> {
  readonly minor: number
  readonly currency: C
}

/** Money from minor units; refuses fractions, amounts too large to be exact, and codes that are no money. */
export function money<const C extends string>(minor: number, currency: C): Money<C> {
  minorUnitsOf(currency)
  return { minor: checkMinor(minor, 'minor'), currency }
}

/** a + b, of one currency. */
export function addMoney<C extends string>(a: Money<C>, b: Money<NoInfer<C>>): Money<C> {
  return sumMoney([a, b], a.currency)
}

/** a − b, of one currency. */
export function subtractMoney<C extends string>(a: Money<C>, b: Money<NoInfer<C>>): Money<C> {
  return sumMoney([a, { ...b, minor: -b.minor }], a.currency)
}

/** The sum of a list, of one currency; zero for an empty list. */
export function sumMoney<C extends string>(amounts: readonly Money<NoInfer<C>>[], currency: C): Money<C> {
  const stranger = amounts.findIndex(amount => amount.currency !== currency)
  if (stranger >= 0)
    throw new Refusal(
      'currencies-mixed',
      `amounts.${stranger}.currency`,
      amounts[stranger]!.currency,
      `${amounts[stranger]!.currency} cannot be added to ${currency}; convert it first at a rate you choose.`,
    )
  return money(sumMinor(amounts.map(amount => amount.minor)), currency)
}

/** amount × factor, rounded once to a whole minor unit. */
export function timesMoney<C extends string>(
  amount: Money<C>,
  factor: DecimalInput,
  rounding?: Rounding,
): Money<C> {
  return money(timesMinor(amount.minor, factor, rounding), amount.currency)
}
