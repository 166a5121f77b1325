/** What past visits were quoted, billed and paid, with the few that are still owed and those that were credited. */
import { addDays, dateOf } from '../../../main/domain/calendar/index.ts'
import type { ShopView } from '../../../main/services/desk/shopView.ts'
import { chargeSold, type JobBill } from '../../../main/services/money/jobBill.ts'
import type { MoneyRules } from '../../../main/services/prices/inputs.ts'
import type { Visit } from './demoWeeks.ts'
import type { Row } from './insertRows.ts'
import type { Rows } from './pastVisits.ts'
import type { Car } from './people.ts'

/** The demo's own papers have the shop's present letters and begin at 1. */
const [invoiceSeries, creditSeries] = ['OLD', 'OLDCN']

const firstQuote = 10_000

interface Billed {
  jobId: string
  visit: Visit
  car: Car
  handoverAt: number
}

export class PastMoney {
  #rules: MoneyRules
  #shop: ShopView
  #taxKeys: ReadonlyMap<string, string>
  #bills = new Map<Visit, JobBill>()
  #visits: Billed[] = []

  constructor(rules: MoneyRules, shop: ShopView, taxKeys: ReadonlyMap<string, string>) {
    this.#rules = rules
    this.#shop = shop
    this.#taxKeys = taxKeys
  }

  add(billed: Billed): void {
    this.#visits.push(billed)
  }

  /** All papers, numbered in the order in which they were issued. */
  rows(): Rows {
    const [invoices, lines, payments, quotes, variants]: Row[][] = [[], [], [], [], []]
    const inTurn = this.#visits.sort((a, b) => a.handoverAt - b.handoverAt || (a.jobId < b.jobId ? -1 : 1))
    let credits = 0
    for (const [n, billed] of inTurn.entries()) {
      const bill = this.#billOf(billed.visit)
      const { jobId, handoverAt: at } = billed
      const fate = n % 150
      const depositMinor = n % 10 === 3 ? Math.round(bill.withTaxMinor / 5) : 0
      const invoice = this.#paper(billed, bill, { kind: 'invoice', number: n + 1, depositMinor })
      invoices!.push(invoice)
      lines!.push(...lineRows(invoice.id as string, bill, false))
      const pay = (payAt: number, amountMinor: number, before: boolean) =>
        payments!.push({
          id: `${jobId}-paid-${before ? 'before' : 'after'}`,
          jobId,
          at: payAt,
          who: 'front desk',
          method: (['card', 'cash', 'transfer'] as const)[n % 3]!,
          amountMinor,
          before: Number(before),
        })
      if (depositMinor > 0) pay(at - 5 * 1440, depositMinor, true)
      if (fate === 90 && depositMinor === 0) {
        const credit = this.#paper(billed, bill, { kind: 'credit', number: ++credits, depositMinor: 0 })
        invoices!.push({ ...credit, correctsId: invoice.id as string, reason: 'Given back' })
        lines!.push(...lineRows(credit.id as string, bill, true))
      } else if (fate !== 7) pay(n % 20 === 0 ? at + 20 * 1440 : at, bill.withTaxMinor - depositMinor, false)
      if (n % 5 === 0) {
        quotes!.push(this.#quote(billed, firstQuote + n))
        variants!.push(variantRow(billed, bill))
      }
    }
    return [
      ['Invoice', invoices!],
      ['InvoiceLine', lines!],
      ['Payment', payments!],
      ['Quote', quotes!],
      ['QuoteVariant', variants!],
    ]
  }

  #billOf(visit: Visit): JobBill {
    const known = this.#bills.get(visit)
    if (known) return known
    const treatments = visit.job.treatments.map(({ treatmentId, name, priceMinor }) => ({
      treatmentId,
      name,
      priceMinor,
      treatment: { taxKey: this.#taxKeys.get(treatmentId) ?? '' },
    }))
    const bill = chargeSold(this.#rules, this.#shop, {
      taxExempt: '',
      taxReversed: false,
      treatments,
      charges: [],
    })
    this.#bills.set(visit, bill)
    return bill
  }

  #paper(
    { jobId, car, handoverAt }: Billed,
    bill: JobBill,
    { kind, number, depositMinor }: { kind: 'invoice' | 'credit'; number: number; depositMinor: number },
  ): Row {
    const { name, zone, country, currency } = this.#shop
    const day = dateOf(handoverAt, zone)
    const party = { address: '', email: '', taxNumber: '' }
    return {
      id: `${jobId}-${kind}`,
      kind,
      series: kind === 'invoice' ? invoiceSeries : creditSeries,
      number,
      jobId,
      issuedAt: handoverAt,
      issuedOn: day,
      dueOn: kind === 'credit' ? day : dateOf(addDays(handoverAt, this.#rules.payWithinDays, zone), zone),
      suppliedOn: day,
      currency,
      taxInPrices: Number(this.#rules.taxInPrices),
      seller: JSON.stringify({ ...party, name, country, phone: '', payTo: '' }),
      buyer: JSON.stringify({ ...party, name: `Owner of ${car.plate}`, country }),
      carWords: `${car.make} ${car.model}, ${car.plate}`,
      taxes: JSON.stringify(bill.taxPerRate),
      withoutTaxMinor: bill.withoutTaxMinor,
      taxMinor: bill.taxMinor,
      withTaxMinor: bill.withTaxMinor,
      depositMinor,
      who: 'front desk',
    }
  }

  #quote({ jobId, car, visit, handoverAt }: Billed, number: number): Row {
    const createdAt = handoverAt - 14 * 1440
    return {
      id: `${jobId}-quote`,
      number,
      vehicleId: car.id,
      status: 'booked',
      condition: visit.job.condition,
      validUntil: dateOf(createdAt + 30 * 1440, this.#shop.zone),
      createdAt,
      accepted: 0,
      signedName: 'Ines Vale',
      signedAt: createdAt + 60,
      jobId,
    }
  }
}

function lineRows(invoiceId: string, bill: JobBill, credit: boolean): Row[] {
  return bill.lines.map(({ quantity, ...line }, position) => ({
    ...line,
    id: `${invoiceId}-${position}`,
    invoiceId,
    position,
    quantity: String(quantity),
    creditsLineId: credit ? `${invoiceId.replace(/credit$/, 'invoice')}-${position}` : null,
  }))
}

function variantRow({ jobId, visit, handoverAt }: Billed, bill: JobBill): Row {
  return {
    id: `${jobId}-quote-0`,
    quoteId: `${jobId}-quote`,
    position: 0,
    name: 'As before',
    treatments: JSON.stringify(
      visit.job.treatments.map(({ treatmentId: id, name, priceMinor }) => ({ id, name, priceMinor })),
    ),
    charges: '[]',
    priceMinor: bill.withTaxMinor,
    lasts: '[]',
    upkeepVisits: 0,
    upkeepMinor: 0,
    dropOffAt: handoverAt - 2 * 1440,
    handoverAt,
  }
}
