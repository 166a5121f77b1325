/** What one job costs, as it would be billed now. */
import { say, word } from '../../domain/language/index.ts'
import {
  type ChargedLine,
  chargeBill,
  type Discount,
  lineAmountMinor,
  majorOf,
  type RateTotal,
  sumMinor,
} from '../../domain/money/index.ts'
import { found } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { type ShopView, shopOf } from '../desk/shopView.ts'
import type { MoneyRules } from '../prices/inputs.ts'
import { moneyRules, rateOf } from '../prices/moneyRules.ts'

export const noSuchJob = word('This job is not there; look at the board.')

/** What came in one minute stands as it was entered. */
const byMinute = [{ at: 'asc' as const }, { id: 'asc' as const }]
const byIssue = [{ issuedAt: 'asc' as const }, { id: 'asc' as const }]

const withMoney = {
  customer: true,
  vehicle: true,
  treatments: { orderBy: { position: 'asc' }, include: { treatment: { select: { taxKey: true } } } },
  charges: { orderBy: { position: 'asc' } },
  payments: { orderBy: byMinute },
  invoices: { orderBy: byIssue },
} as const

export type MoneyJob = Awaited<ReturnType<typeof moneyJob>>

/** A job with all its money. Of one whose car never came only what was put on its bill since is owed. */
export async function moneyJob(tx: Tx, id: string) {
  const job = found(await tx.job.findUnique({ where: { id }, include: withMoney }), { id }, say(noSuchJob))
  if (job.status !== 'noShow') return job
  return { ...job, treatments: [] }
}

export interface BilledLine extends ChargedLine {
  readonly discountReason: string
}

export interface JobBill {
  readonly rules: MoneyRules
  readonly shop: ShopView
  /** More was to be taken off than there is. */
  readonly cut: boolean
  readonly lines: readonly BilledLine[]
  readonly allowanceReason: string
  readonly taxPerRate: readonly (RateTotal & { name: string })[]
  readonly withoutTaxMinor: number
  readonly taxMinor: number
  readonly withTaxMinor: number
}

interface Sold {
  readonly taxExempt: string
  readonly taxReversed: boolean
  readonly treatments: readonly {
    readonly treatmentId: string
    readonly name: string
    readonly priceMinor: number
    readonly treatment: { readonly taxKey: string }
  }[]
  readonly charges: readonly {
    readonly kind: string
    readonly treatmentId: string | null
    readonly words: string
    readonly quantity: string
    readonly amountMinor: number
    readonly taxKey: string
  }[]
}

/** Charges what was sold by the shop's present rates. */
export async function billOf(tx: Tx, job: Sold): Promise<JobBill> {
  const [rules, shop] = await Promise.all([moneyRules(tx), shopOf(tx)])
  return chargeSold(rules, shop, job)
}

/** The same with the rules at hand. */
export function chargeSold(rules: MoneyRules, shop: ShopView, job: Sold): JobBill {
  let cut = false
  // A price that came down since, after a test spot for one, leaves no discount above it: the bill can still be looked at.
  const off = (treatmentId: string | null, whole: number): Discount[] => {
    let left = whole
    return job.charges
      .filter(each => each.kind !== 'extra' && each.treatmentId === treatmentId)
      .map(({ amountMinor, words }) => {
        const most = Math.min(amountMinor, left)
        cut ||= most < amountMinor
        left -= most
        return { amountMinor: most, reason: words }
      })
  }
  const given = [
    ...job.treatments.map(({ name, priceMinor, treatmentId, treatment }) => ({
      name,
      quantity: '1',
      priceMinor,
      discounts: off(treatmentId, priceMinor),
      tax: rateOf(rules, treatment.taxKey),
    })),
    ...job.charges
      .filter(each => each.kind === 'extra')
      .map(({ words, quantity, amountMinor, taxKey }) => ({
        name: words,
        quantity,
        priceMinor: amountMinor,
        discounts: [],
        tax: rateOf(rules, taxKey),
      })),
  ]
  const left = sumMinor(
    given.map(({ quantity, priceMinor, discounts }) =>
      sumMinor([
        lineAmountMinor(quantity, majorOf(priceMinor, shop.currency), shop.currency),
        ...discounts.map(each => -each.amountMinor),
      ]),
    ),
  )
  const whole = off(null, left)
  const { lines, totals } = chargeBill({
    currency: shop.currency,
    lines: given,
    discounts: whole,
    amounts: rules.taxInPrices ? 'gross' : 'net',
    exemption: job.taxExempt,
    reversed: job.taxReversed,
  })
  const { withoutTaxMinor, taxMinor, withTaxMinor } = totals
  return {
    rules,
    shop,
    cut,
    lines: lines.map((line, i) => ({ ...line, discountReason: reasonsOf(given[i]!.discounts) })),
    allowanceReason: reasonsOf(whole),
    taxPerRate: totals.taxPerRate.map(rate => ({ ...rate, name: nameOfRate(rules, rate) })),
    withoutTaxMinor,
    taxMinor,
    withTaxMinor,
  }
}

const reasonsOf = (discounts: readonly Discount[]) =>
  [...new Set(discounts.filter(each => each.amountMinor > 0).map(each => each.reason))].join('; ')

/** What a rate is called on papers; an exemption has none of the shop's. */
function nameOfRate({ taxes }: MoneyRules, { category, ratePercent }: RateTotal): string {
  if (category === 'E') return say('Exempt')
  if (category === 'AE') return say('Reverse charge')
  const rate = taxes.find(each => each.category === category && Number(each.percent) === Number(ratePercent))
  return rate?.name ?? say('Tax')
}

/** What a line brings in: without tax, and without its part of what was taken off the whole. */
export function netOf(line: Pick<ChargedLine, 'netMinor' | 'amountMinor' | 'allowanceMinor'>): number {
  const { netMinor, amountMinor, allowanceMinor } = line
  return Math.round(netMinor * (amountMinor === 0 ? 1 : 1 - allowanceMinor / amountMinor))
}

/** What a job was billed, credited and paid so far. */
export function accountOf({ invoices, payments }: Pick<MoneyJob, 'invoices' | 'payments'>) {
  const sum = (kind: string) =>
    sumMinor(invoices.filter(each => each.kind === kind).map(each => each.withTaxMinor))
  const billedMinor = sum('invoice')
  const creditedMinor = sum('credit')
  const paidMinor = sumMinor(payments.map(each => each.amountMinor))
  return { billedMinor, creditedMinor, paidMinor, owedMinor: billedMinor - creditedMinor - paidMinor }
}

/** The job's invoice that still stands: issued, and not credited in full. */
export function standingInvoice({ invoices }: Pick<MoneyJob, 'invoices'>) {
  return invoices.find(
    each =>
      each.kind === 'invoice' &&
      sumMinor(invoices.filter(other => other.correctsId === each.id).map(other => other.withTaxMinor)) <
        each.withTaxMinor,
  )
}
