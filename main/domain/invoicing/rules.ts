/**
 * The rules of EN 16931-1 an invoice of a shop can break, by their public identifiers. They look at the invoice's terms;
 * the two forms of XML are written from the same terms and are held against them by tests.
 */
import { say } from '../language/index.ts'
import { divideRounded, readDecimal, tenTo } from '../money/decimal.ts'
import { minorUnitsOf, sumMinor } from '../money/index.ts'
import { type ElectronicInvoice, taxNumbersOf, wantsReason } from './invoice.ts'

export interface RuleBroken {
  /** `BR-CO-10` */
  readonly rule: string
  readonly words: string
}

/** Every rule that does not hold; empty: none is broken. */
export function brokenRules(invoice: ElectronicInvoice): RuleBroken[] {
  const broken: RuleBroken[] = []
  const must = (holds: boolean, rule: string, words: string) => {
    if (!holds) broken.push({ rule, words })
  }
  const said = (text: string) => text.trim() !== ''
  must(said(invoice.number), 'BR-02', say('The invoice needs its number.'))
  must(isDay(invoice.issuedOn), 'BR-03', say('The invoice needs the day it is issued on.'))
  must(isCurrency(invoice.currency), 'BR-05', say('The invoice needs its currency.'))
  must(said(invoice.seller.name), 'BR-06', say('The seller needs a name: enter it in Settings, Shop.'))
  must(said(invoice.buyer.name), 'BR-07', say('The buyer needs a name.'))
  must(
    invoice.seller.address.some(said),
    'BR-08',
    say('The seller needs an address: enter it in Settings, Shop.'),
  )
  must(isCountry(invoice.seller.country), 'BR-09', say('The seller’s address needs its country.'))
  must(
    invoice.buyer.address.some(said),
    'BR-10',
    say('The buyer needs an address: enter it where the invoice is issued.'),
  )
  must(isCountry(invoice.buyer.country), 'BR-11', say('The buyer’s address needs its country.'))
  must(invoice.lines.length > 0, 'BR-16', say('An invoice has at least one line.'))
  must(
    invoice.lines.every(({ netMinor }) => netMinor >= 0),
    'BR-27',
    say('A line has a price below zero.'),
  )
  must(
    invoice.corrects === null || said(invoice.corrects.number),
    'BR-55',
    say('The credit note needs the number of the invoice it corrects.'),
  )
  must(
    !isCurrency(invoice.currency) || minorUnitsOf(invoice.currency) <= 2,
    'BR-DEC-14',
    say('The norm writes two places after the point; {currency} has more.', { currency: invoice.currency }),
  )
  must(
    new Set(invoice.lines.map(({ id }) => id)).size === invoice.lines.length,
    'BR-21',
    say('Two lines have one number.'),
  )
  must(
    invoice.lines.every(({ name }) => said(name)),
    'BR-25',
    say('A line has no name.'),
  )
  must(
    invoice.allowances.every(({ reason }) => said(reason)),
    'BR-33',
    say('Say why there is a discount.'),
  )
  totals(invoice, must)
  taxRules(invoice, must)
  return broken
}

type Must = (holds: boolean, rule: string, words: string) => void

const isDay = (date: string) => /^\d{4}-\d\d-\d\d$/.test(date)
const isCurrency = (code: string) => /^[A-Z]{3}$/.test(code)
const isCountry = (code: string) => /^[A-Z]{2}$/.test(code)

function totals(invoice: ElectronicInvoice, must: Must): void {
  const { sumOfLinesMinor, allowancesMinor, withoutTaxMinor, taxMinor, withTaxMinor, paidMinor, dueMinor } =
    invoice
  const lines = sumMinor(invoice.lines.map(line => line.netMinor))
  const off = sumMinor(invoice.allowances.map(allowance => allowance.amountMinor))
  const tax = sumMinor(invoice.taxes.map(each => each.taxMinor))
  must(sumOfLinesMinor === lines, 'BR-CO-10', say('The lines do not add up to their sum.'))
  must(allowancesMinor === off, 'BR-CO-11', say('The discounts do not add up.'))
  must(
    withoutTaxMinor === lines - off,
    'BR-CO-13',
    say('The total without tax is not the lines less what is taken off.'),
  )
  must(taxMinor === tax, 'BR-CO-14', say('The tax is not the sum of the tax of each rate.'))
  must(
    withTaxMinor === withoutTaxMinor + taxMinor,
    'BR-CO-15',
    say('The total is not the sum of net and tax.'),
  )
  must(
    dueMinor === withTaxMinor - paidMinor,
    'BR-CO-16',
    say('What is due is not the total less what was paid.'),
  )
  must(
    dueMinor <= 0 || isDay(invoice.dueOn) || invoice.payTo !== '',
    'BR-CO-25',
    say('Say by when it is to be paid.'),
  )
}

function taxRules(invoice: ElectronicInvoice, must: Must): void {
  const { seller, taxes } = invoice
  must(taxes.length > 0, 'BR-CO-18', say('No tax is broken down.'))
  must(
    seller.taxNumber !== '',
    'BR-CO-26',
    say('The seller needs a tax number: enter it in Settings, Prices and tax.'),
  )
  must(
    new Set(taxes.map(({ category }) => category === 'O')).size <= 1,
    'BR-O-11',
    say('What lies outside the scope of tax has an invoice of its own.'),
  )
  must(
    taxes.every(({ category }) => category !== 'AE') ||
      [seller, invoice.buyer].every(party => taxNumbersOf(party).vat !== ''),
    'BR-AE-02',
    say('A reverse charge needs the VAT numbers of seller and buyer, each with the letters of its country.'),
  )
  for (const tax of taxes) {
    const mine = (each: { category: string; ratePercent: string }) =>
      each.category === tax.category && each.ratePercent === tax.ratePercent
    const base =
      sumMinor(invoice.lines.filter(mine).map(line => line.netMinor)) -
      sumMinor(invoice.allowances.filter(mine).map(allowance => allowance.amountMinor))
    must(
      tax.baseMinor === base,
      `BR-${tax.category}-08`,
      say('The base at {ratePercent} % is not what its lines come to.', { ratePercent: tax.ratePercent }),
    )
    // One unit either way: where prices have their tax in them, it is the rest of the gross amount that is left.
    const off = Math.abs(tax.taxMinor - taxOn(tax.baseMinor, tax.ratePercent))
    must(
      off <= (tax.category === 'S' ? 1 : 0),
      tax.category === 'S' ? 'BR-CO-17' : `BR-${tax.category}-09`,
      say('The tax is not base times rate.'),
    )
    if (tax.category === 'S')
      must(Number(tax.ratePercent) > 0, 'BR-S-05', say('A standard rate is above zero.'))
    else must(Number(tax.ratePercent) === 0, `BR-${tax.category}-05`, say('Without tax the rate is zero.'))
    if (wantsReason(tax.category))
      must(invoice.exemption.trim() !== '', `BR-${tax.category}-10`, say('Say why no tax is charged.'))
  }
  const used = new Set(
    [...invoice.lines, ...invoice.allowances].map(each => `${each.category} ${each.ratePercent}`),
  )
  const broken = new Set(taxes.map(tax => `${tax.category} ${tax.ratePercent}`))
  must(
    [...used].every(each => broken.has(each)),
    'BR-S-01',
    say('A rate that is used is not broken down.'),
  )
}

/** Base times rate, rounded half up to a minor unit. */
function taxOn(baseMinor: number, percent: string): number {
  const rate = readDecimal(percent, 'ratePercent')
  return Number(divideRounded(BigInt(baseMinor) * rate.units, tenTo(rate.scale + 2), 'half-up'))
}
