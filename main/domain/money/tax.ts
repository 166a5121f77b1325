import { refuse } from '../refusal.ts'
import { type DecimalInput, divideRounded, readDecimal, tenTo } from './decimal.ts'
import { checkMinor, minorFromBigInt, percentOfMinor, sumMinor } from './minor.ts'

/** What one amount at one rate comes to. `netMinor + taxMinor` is always what is paid. */
export interface TaxSplit {
  readonly netMinor: number
  readonly taxMinor: number
}

/** Refuses a rate that is no decimal or below zero. */
export function checkRate(ratePercent: DecimalInput, field = 'ratePercent'): void {
  if (readDecimal(ratePercent, field).units < 0n)
    refuse(
      'rate-negative',
      { [field]: ratePercent },
      `A tax rate of ${ratePercent} % is below zero; use 0 or more.`,
    )
}

/** Tax on top of a net amount: net × rate / 100, half up to a whole minor unit. */
export function taxOnNet(netMinor: number, ratePercent: DecimalInput): TaxSplit {
  checkRate(ratePercent)
  return { netMinor: checkMinor(netMinor, 'netMinor'), taxMinor: percentOfMinor(netMinor, ratePercent) }
}

/** Tax inside a gross amount: net = gross / (1 + rate / 100), half up; the tax is the difference, so nothing is lost. */
export function taxInGross(grossMinor: number, ratePercent: DecimalInput): TaxSplit {
  checkRate(ratePercent)
  const gross = BigInt(checkMinor(grossMinor, 'grossMinor'))
  const rate = readDecimal(ratePercent, 'ratePercent')
  const hundred = 100n * tenTo(rate.scale)
  const netMinor = minorFromBigInt(
    divideRounded(gross * hundred, hundred + rate.units, 'half-up'),
    'grossMinor',
  )
  return { netMinor, taxMinor: minorFromBigInt(gross - BigInt(netMinor), 'grossMinor') }
}

/**
 * Tax of several amounts at one rate: once on their sum (`document`, what EN 16931 asks for) or line by line and then
 * added (`line`, what some tills do). The two may differ by some minor units.
 * Source: EN 16931-1 BR-CO-17, BR-S-09.
 */
export function taxOfLines(
  amountsMinor: readonly number[],
  ratePercent: DecimalInput,
  level: 'document' | 'line',
  split: (amountMinor: number, ratePercent: DecimalInput) => TaxSplit = taxOnNet,
): TaxSplit {
  const splits = (level === 'document' ? [sumMinor(amountsMinor)] : amountsMinor).map(amount =>
    split(amount, ratePercent),
  )
  return {
    netMinor: sumMinor(splits.map(each => each.netMinor)),
    taxMinor: sumMinor(splits.map(each => each.taxMinor)),
  }
}
