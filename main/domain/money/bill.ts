/** From what a car's visit costs to what its invoice says: discounts, exemption, tax, each line's share of all of it. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { allocate } from './allocate.ts'
import type { DecimalInput } from './decimal.ts'
import { type DocumentTotals, documentTotals, lineAmountMinor } from './document.ts'
import { majorOf, sumMinor } from './minor.ts'
import { shortRate, type TaxCategory, type TaxRate, taxInGross } from './tax.ts'

/** Money taken off, with why; the amount is at least zero. */
export interface Discount {
  readonly amountMinor: number
  readonly reason: string
}

/** One thing that is charged. */
export interface BillLine {
  readonly name: string
  readonly quantity: DecimalInput
  /** For one of it. */
  readonly priceMinor: number
  readonly discounts: readonly Discount[]
  readonly tax: Pick<TaxRate, 'percent' | 'category'>
}

export interface Bill {
  readonly currency: string
  readonly lines: readonly BillLine[]
  /** Off the whole. */
  readonly discounts: readonly Discount[]
  /** Whether prices have their tax in them. */
  readonly amounts: 'net' | 'gross'
  /** Why this customer pays no tax; empty: they pay it. */
  readonly exemption: string
  /** The customer owes the tax instead (reverse charge). */
  readonly reversed: boolean
}

/** A line as it is charged. All amounts are as prices are: with tax in them where prices have it. */
export interface ChargedLine {
  readonly name: string
  readonly quantity: DecimalInput
  readonly priceMinor: number
  /** Taken off this line. */
  readonly discountMinor: number
  /** Quantity times price less that. */
  readonly amountMinor: number
  /** Its part of what is taken off the whole. */
  readonly allowanceMinor: number
  /** Without tax and before the allowance, as EN 16931 adds lines up (BT-131). */
  readonly netMinor: number
  readonly ratePercent: string
  readonly category: TaxCategory
}

export interface ChargedBill {
  readonly lines: readonly ChargedLine[]
  readonly totals: DocumentTotals
}

/**
 * Charges a bill. What is taken off the whole is spread over the lines by their amounts, so that each rate bears its part
 * and a line can be credited for what it really cost. A customer who pays no tax pays prices without the tax in them.
 * @throws Refusal for a discount without a reason, one above what it is taken off, and a price below zero.
 */
export function chargeBill({ currency, lines, discounts, amounts, exemption, reversed }: Bill): ChargedBill {
  const exempt = reversed || exemption.trim() !== ''
  const without = reversed ? 'AE' : 'E'
  const bare = lines.map((line, i) => {
    const whole = lineAmountMinor(line.quantity, majorOf(line.priceMinor, currency), currency)
    if (whole < 0)
      refuse(
        'price-negative',
        { [`lines.${i}.priceMinor`]: line.priceMinor },
        say('{name} costs less than nothing; give a price of 0 or more and a discount instead.', {
          name: line.name,
        }),
      )
    const field = `lines.${i}.discounts`
    const discountMinor = sumOff(line.discounts, { whole, field, what: line.name })
    const untaxed = (minor: number) =>
      exempt && amounts === 'gross' ? taxInGross(minor, line.tax.percent).netMinor : minor
    const amountMinor = untaxed(whole - discountMinor)
    return {
      name: line.name,
      quantity: line.quantity,
      priceMinor: untaxed(line.priceMinor),
      // As a difference, so that price, discount and amount agree where rounding has moved the first.
      discountMinor: discountMinor === 0 ? 0 : untaxed(whole) - amountMinor,
      amountMinor,
      ratePercent: exempt ? '0' : shortRate(line.tax.percent),
      category: exempt ? (without as TaxCategory) : line.tax.category,
    }
  })
  const sum = sumMinor(bare.map(line => line.amountMinor))
  const off = sumOff(discounts, { whole: sum, field: 'discounts', what: say('the whole') })
  const weights = bare.map(line => line.amountMinor)
  const shares = off === 0 ? weights.map(() => 0) : allocate(off, weights)
  const shared = bare.map((line, i) => ({ ...line, allowanceMinor: shares[i]! }))
  return { lines: withNets(shared, amounts), totals: totalsOf(shared, amounts) }
}

/** What is taken off together; refused beyond what there is, or without saying why. */
function sumOff(
  discounts: readonly Discount[],
  { whole, field, what }: { whole: number; field: string; what: string },
): number {
  discounts.forEach(({ amountMinor, reason }, i) => {
    if (amountMinor < 0)
      refuse(
        'discount-negative',
        { [`${field}.${i}.amountMinor`]: amountMinor },
        say('A discount takes off 0 or more.'),
      )
    if (amountMinor > 0 && reason.trim() === '')
      refuse(
        'discount-unexplained',
        { [`${field}.${i}.reason`]: reason },
        say('Say why it is taken off; a word will do.'),
      )
  })
  const off = sumMinor(discounts.map(each => each.amountMinor))
  if (off > whole)
    refuse(
      'discount-too-large',
      { [`${field}.0.amountMinor`]: off },
      say('The discount on {what} is more than its price; give less.', { what }),
    )
  return off
}

type Shared = Omit<ChargedLine, 'netMinor'>

/** The totals of charged lines, each with its part of the allowance. */
export function totalsOf(
  lines: readonly Pick<Shared, 'amountMinor' | 'allowanceMinor' | 'ratePercent' | 'category'>[],
  amounts: 'net' | 'gross',
): DocumentTotals {
  const adjustments = lines
    .filter(line => line.allowanceMinor > 0)
    .map(({ allowanceMinor, ratePercent, category }) => ({
      amountMinor: allowanceMinor,
      ratePercent,
      category,
      charge: false,
    }))
  return documentTotals({ lines, adjustments, amounts })
}

/** Lines without their tax: those of one rate share out what it comes to, so that they add up to it exactly. */
function withNets(lines: readonly Shared[], amounts: 'net' | 'gross'): ChargedLine[] {
  if (amounts === 'net') return lines.map(line => ({ ...line, netMinor: line.amountMinor }))
  const nets = new Map<number, number>()
  for (const same of Map.groupBy(
    lines.keys(),
    i => `${lines[i]!.category} ${lines[i]!.ratePercent}`,
  ).values()) {
    const gross = same.map(i => lines[i]!.amountMinor)
    const { ratePercent } = lines[same[0]!]!
    const charged = sumMinor(same.map(i => lines[i]!.amountMinor - lines[i]!.allowanceMinor))
    const allowed = sumMinor(same.map(i => lines[i]!.allowanceMinor))
    const net = taxInGross(charged, ratePercent).netMinor + taxInGross(allowed, ratePercent).netMinor
    const parts = sumMinor(gross) === 0 ? gross : allocate(net, gross)
    same.forEach((i, at) => {
      nets.set(i, parts[at]!)
    })
  }
  return lines.map((line, i) => ({ ...line, netMinor: nets.get(i)! }))
}
