import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { minorUnitsOf } from './currencies.ts'
import { type DecimalInput, divideRounded, readDecimal, tenTo } from './decimal.ts'
import { checkMinor, minorFromBigInt, sumMinor } from './minor.ts'
import { checkRate, shortRate, type TaxCategory, taxInGross, taxOnNet } from './tax.ts'

/** One line of a quote or invoice. A line given back is a negative amount. */
export interface DocumentLine {
  readonly amountMinor: number
  /** Percent, such as "19" or 8.25. */
  readonly ratePercent: DecimalInput
  /** Standard where it is left out. */
  readonly category?: TaxCategory
}

/** A reduction or a charge on the whole document; the amount is at least zero. */
export interface Adjustment extends DocumentLine {
  readonly charge: boolean
}

export interface DocumentInput {
  readonly lines: readonly DocumentLine[]
  readonly adjustments?: readonly Adjustment[]
  readonly paidMinor?: number
  /** Whether amounts come without tax (`net`, the default) or with it (`gross`). */
  readonly amounts?: 'net' | 'gross'
}

export interface RateTotal {
  readonly category: TaxCategory
  /** The rate in its shortest form: "19.00" and 19 are both "19". */
  readonly ratePercent: string
  readonly baseMinor: number
  readonly taxMinor: number
}

export interface DocumentTotals {
  /** One entry a category and rate, in order of first use. */
  readonly taxPerRate: readonly RateTotal[]
  /** Sum of the lines as they were given (BT-106 where amounts are net). */
  readonly sumOfLinesMinor: number
  readonly allowancesMinor: number
  readonly chargesMinor: number
  readonly withoutTaxMinor: number
  readonly taxMinor: number
  readonly withTaxMinor: number
  readonly paidMinor: number
  readonly dueMinor: number
}

/**
 * Net amount of a line: quantity × price / per, exact until it is rounded half up to a minor unit. The price is in major
 * units and may be finer than the currency ("0.00880"); `perQuantity` is how many the price is for.
 * Source: EN 16931-1, BT-131 from BT-129, BT-146 and BT-149.
 */
export function lineAmountMinor(
  quantity: DecimalInput,
  price: DecimalInput,
  currency: string,
  perQuantity: DecimalInput = 1,
): number {
  const count = readDecimal(quantity, 'quantity')
  const each = readDecimal(price, 'price')
  const per = readDecimal(perQuantity, 'perQuantity')
  if (per.units <= 0n)
    refuse(
      'per-not-positive',
      { perQuantity },
      say('A price for {perQuantity} pieces makes no sense; say how many the price is for, at least one.', {
        perQuantity,
      }),
    )
  const numerator = count.units * each.units * tenTo(per.scale + minorUnitsOf(currency))
  const denominator = per.units * tenTo(count.scale + each.scale)
  return minorFromBigInt(divideRounded(numerator, denominator, 'half-up'), 'quantity')
}

/**
 * Totals of a quote or an invoice: tax a rate, without tax, with tax, due. Tax is rounded once for each category and
 * rate, on what all its lines come to, never line by line: line by line some cents would differ.
 * Source: EN 16931-1 BR-CO-10, BR-CO-13 to BR-CO-17, BR-S-08, BR-S-09; rounding half up.
 */
export function documentTotals(input: DocumentInput): DocumentTotals {
  const { lines, adjustments = [], paidMinor = 0, amounts = 'net' } = input
  const groups = new Map<string, { category: TaxCategory; ratePercent: string; amounts: number[] }>()
  const add = (line: DocumentLine, amountMinor: number, field: string) => {
    checkRate(line.ratePercent, `${field}.ratePercent`)
    const { category = 'S' } = line
    const ratePercent = shortRate(line.ratePercent)
    const key = `${category} ${ratePercent}`
    const group = groups.get(key) ?? { category, ratePercent, amounts: [] }
    group.amounts.push(checkMinor(amountMinor, `${field}.amountMinor`))
    groups.set(key, group)
  }
  lines.forEach((line, i) => {
    add(line, line.amountMinor, `lines.${i}`)
  })
  adjustments.forEach((adjustment, i) => {
    const { amountMinor, charge } = adjustment
    if (amountMinor < 0)
      refuse(
        'adjustment-negative',
        { [`adjustments.${i}.amountMinor`]: amountMinor },
        say(
          '{amountMinor} is below zero; say whether it is a reduction or a charge and give the amount itself.',
          { amountMinor },
        ),
      )
    add(adjustment, charge ? amountMinor : -amountMinor, `adjustments.${i}`)
  })

  const taxPerRate = [...groups.values()].map(({ category, ratePercent, amounts: list }) => {
    const split = (amounts === 'net' ? taxOnNet : taxInGross)(sumMinor(list), ratePercent)
    return { category, ratePercent, baseMinor: split.netMinor, taxMinor: split.taxMinor }
  })
  const withoutTaxMinor = sumMinor(taxPerRate.map(rate => rate.baseMinor))
  const taxMinor = sumMinor(taxPerRate.map(rate => rate.taxMinor))
  const withTaxMinor = sumMinor([withoutTaxMinor, taxMinor])
  const sumWhere = (charge: boolean) =>
    sumMinor(adjustments.filter(each => each.charge === charge).map(each => each.amountMinor))
  return {
    taxPerRate,
    sumOfLinesMinor: sumMinor(lines.map(line => line.amountMinor)),
    allowancesMinor: sumWhere(false),
    chargesMinor: sumWhere(true),
    withoutTaxMinor,
    taxMinor,
    withTaxMinor,
    paidMinor,
    dueMinor: sumMinor([withTaxMinor, -paidMinor]),
  }
}
