/**
 * Amounts of stock. Inside, an amount is a whole number of hundredths of the product's unit (`Centi` in the name), so
 * that sums are exact in whatever order they are added, in the program as in the database. A hundredth of a
 * millilitre is finer than any scale or syringe in a shop.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export type Unit = 'ml' | 'g' | 'piece'

export const CENTI_PER_UNIT = 100

/** The largest amount anybody enters at once: a hundred litres, a hundred kilograms, a hundred thousand pieces. */
export const mostUnits = 100_000

/** `12.5` as 1250. Rounds to the nearest hundredth; refuses what is not a number of at most `mostUnits` either way. */
export function centiOf(amount: number, field = 'amount'): number {
  const centi = Math.round(amount * CENTI_PER_UNIT)
  if (!(Math.abs(amount) <= mostUnits))
    refuse(
      'amount-bad',
      { [field]: amount },
      say('{amount} is not an amount; give a number such as 12.5, at most 100,000.', { amount }),
    )
  return centi === 0 ? 0 : centi
}

/** 1250 as `12.5`. */
export function unitsOf(centi: number): number {
  return centi / CENTI_PER_UNIT
}

/** Refuses an amount that is not a whole, positive number of hundredths. */
export function checkPositive(centi: number, field: string): void {
  if (!Number.isSafeInteger(centi) || centi <= 0)
    refuse(
      'amount-not-positive',
      { [field]: centi },
      say('{centi} is not an amount to move; give more than nothing, in steps of 0.01.', {
        centi: unitsOf(centi),
      }),
    )
}
