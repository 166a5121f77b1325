import { roundTo } from './decimal.ts'

/** What is asked in coins: an amount rounded half up to the smallest coin there is, both in minor units. */
export function inCoins(amountMinor: number, stepMinor: number): number {
  return Number(roundTo(amountMinor, stepMinor))
}
