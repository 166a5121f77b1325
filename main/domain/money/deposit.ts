import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { type DecimalInput, readDecimal } from './decimal.ts'
import { percentOfMinor, sumMinor } from './minor.ts'

/**
 * A deposit of so many percent of a total, half up to a minor unit, and the balance that makes the total again. The
 * percentage is from 0 to 100.
 */
export function splitDeposit(
  totalMinor: number,
  percent: DecimalInput,
): { depositMinor: number; balanceMinor: number } {
  const share = readDecimal(percent, 'percent')
  if (share.units < 0n || share.units > 100n * 10n ** BigInt(share.scale))
    refuse(
      'deposit-out-of-range',
      { percent },
      say('A deposit of {percent} % is not between 0 and 100 % of the price.', { percent }),
    )
  const depositMinor = percentOfMinor(totalMinor, percent)
  return { depositMinor, balanceMinor: sumMinor([totalMinor, -depositMinor]) }
}
