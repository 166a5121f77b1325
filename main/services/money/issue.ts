/** Issues invoices and credit notes: numbered without a gap, and never changed from then on. */

import { dateOf, dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { creditTotals, type RateTotal, sumMinor } from '../../domain/money/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import { listWords } from '../../domain/words.ts'
import { fromJson, toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { type ShopView, shopOf } from '../desk/shopView.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import type { MoneyRules } from '../prices/inputs.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { unpricedOf } from './bill.ts'
import { askOfElectronic } from './electronic.ts'
import type { CreditInput, IssueInput } from './inputs.ts'
import { type Buyer, creditedByLine, numberWords, type Seller } from './invoiceView.ts'
import { accountOf, billOf, type MoneyJob, moneyJob, standingInvoice } from './jobBill.ts'

/**
 * The next number of a series. It is asked for inside the act that saves it, and writers take turns: of two windows the
 * second gets the next one, and an act that fails, or dies, leaves none out.
 */
async function nextNumber(tx: Tx, series: string): Promise<number> {
  const { _max } = await tx.invoice.aggregate({ where: { series }, _max: { number: true } })
  return (_max.number ?? 0) + 1
}

/** Issues the invoice of a job as its bill now stands, for whom the desk names. */
export async function issueInvoice(desk: Desk, input: IssueInput): Promise<{ id: string; name: string }> {
  const { id: jobId, version } = input
  const buyer = checkedBuyer(input.buyer)
  const note = checkNote(input.note, 'note', 1_000)
  return act(desk, async (tx, audit, at) => {
    const job = await moneyJob(tx, jobId)
    if (!['booked', 'inShop', 'handedOver', 'noShow'].includes(job.status))
      refuse(
        'not-booked',
        { id: jobId },
        say('Job {number} is not booked, so there is nothing to bill.', { number: job.number }),
      )
    const standing = standingInvoice(job)
    if (standing)
      refuse(
        'invoiced',
        { id: jobId },
        say('Job {number} is billed already: invoice {standing}.', {
          number: job.number,
          standing: numberWords(standing),
        }),
      )
    const unpriced = unpricedOf(job.treatments)
    if (unpriced.length > 0)
      refuse(
        'price-missing',
        { id: jobId },
        say(
          '{unpriced} has no price. Enter it in the bill; what is given away has a price and a discount of all of it.',
          { unpriced: listWords(unpriced) },
        ),
      )
    const { count } = await tx.job.updateMany({
      where: { id: jobId, version },
      data: { version: { increment: 1 } },
    })
    assertFresh(count, 'job', jobId)
    const issued = await issueIn(tx, audit, { job, buyer, note, at, who: desk.who })
    await askOfElectronic(tx, issued.id, input.accepted)
    return issued
  })
}

interface Issuing {
  /** Given by the demo shop, whose rows are the same each time. */
  id?: string
  job: MoneyJob
  buyer: Buyer
  note: string
  at: number
  who: string
}

/** The same as part of a larger act, for a job that may be billed. */
export async function issueIn(
  tx: Tx,
  audit: Audit,
  { id: given, job, buyer, note, at, who }: Issuing,
): Promise<{ id: string; name: string }> {
  const jobId = job.id
  const bill = await billOf(tx, job)
  const { rules, shop } = bill
  const issuedOn = dateOf(at, shop.zone)
  const series = rules.invoiceSeries
  const number = await nextNumber(tx, series)
  const deposits = sumMinor(job.payments.filter(each => each.before).map(each => each.amountMinor))
  const depositMinor = deposits - sumMinor(job.invoices.map(each => each.depositMinor))
  // Of an invoice that was credited in full the money is here: what it paid is not asked for again.
  const onAccount = -accountOf(job).owedMinor - depositMinor
  const carriedMinor = Math.max(0, Math.min(onAccount, bill.withTaxMinor - depositMinor))
  const { id } = await tx.invoice.create({
    data: {
      ...(given && { id: given }),
      kind: 'invoice',
      series,
      number,
      jobId,
      issuedAt: at,
      issuedOn,
      dueOn: dateOfDay(dayNumber(issuedOn) + rules.payWithinDays),
      suppliedOn: dateOf(job.leftAt ?? at, shop.zone),
      currency: shop.currency,
      taxInPrices: rules.taxInPrices,
      seller: toJson(sellerOf(shop, rules)),
      buyer: toJson(buyer),
      carWords: nameOfCar(job.vehicle),
      note,
      exemption: job.taxExempt,
      allowanceReason: bill.allowanceReason,
      taxes: bill.taxPerRate.map(toJson),
      withoutTaxMinor: bill.withoutTaxMinor,
      taxMinor: bill.taxMinor,
      withTaxMinor: bill.withTaxMinor,
      depositMinor,
      carriedMinor,
      who,
      lines: {
        create: bill.lines.map(({ quantity, ...line }, position) => ({
          ...line,
          quantity: String(quantity),
          position,
        })),
      },
    },
  })
  const name = numberWords({ series, number })
  audit({
    act: 'invoiced',
    entity: 'job',
    entityId: jobId,
    detail: { invoice: name, totalMinor: bill.withTaxMinor },
  })
  return { id, name }
}

/** Gives back all of an invoice or a part of it. */
export async function creditInvoice(desk: Desk, input: CreditInput): Promise<{ id: string; name: string }> {
  const reason = checkText(input.reason, 'reason', say('Why it is credited'), 200)
  return act(desk, async (tx, audit, at) => {
    const row = found(
      await tx.invoice.findUnique({
        where: { id: input.id },
        include: {
          lines: { orderBy: { position: 'asc' } },
          credits: { include: { lines: true } },
        },
      }),
      { id: input.id },
      say('This invoice is not there.'),
    )
    if (row.kind !== 'invoice')
      refuse(
        'not-invoice',
        { id: input.id },
        say('A credit note is not credited itself; issue a new invoice.'),
      )
    const asked = new Map(input.lines.map(line => [line.id, line.amountMinor]))
    const stray = input.lines.findIndex(line => row.lines.every(each => each.id !== line.id))
    if (stray >= 0)
      refuse(
        'line-elsewhere',
        { [`lines.${stray}.id`]: input.lines[stray]?.id },
        say('That is no line of this invoice.'),
      )
    const credited = creditedByLine(row.credits)
    const now = row.lines.map(line => asked.get(line.id) ?? 0)
    const lines = row.lines.map(line => ({ ...line, category: line.category as RateTotal['category'] }))
    const before = row.lines.map(line => credited.get(line.id) ?? 0)
    const seen = sumMinor(row.credits.map(credit => credit.withTaxMinor))
    if (seen !== input.seenCreditedMinor)
      refuse(
        'stale',
        { seenCreditedMinor: input.seenCreditedMinor },
        say('A credit note was issued in another window; look at what is left now.'),
      )
    const totals = creditTotals(lines, before, now, row.taxInPrices ? 'gross' : 'net')
    const rules = await moneyRules(tx)
    const issuedOn = dateOf(at, (await shopOf(tx)).zone)
    const names = new Map(
      fromJson<(RateTotal & { name: string })[]>(row.taxes).map(rate => [keyOf(rate), rate.name]),
    )
    const series = rules.creditSeries
    const number = await nextNumber(tx, series)
    const { id } = await tx.invoice.create({
      data: {
        kind: 'credit',
        series,
        number,
        jobId: row.jobId,
        correctsId: row.id,
        issuedAt: at,
        issuedOn,
        dueOn: issuedOn,
        suppliedOn: row.suppliedOn,
        currency: row.currency,
        taxInPrices: row.taxInPrices,
        seller: toJson(fromJson<Seller>(row.seller)),
        buyer: toJson(fromJson<Buyer>(row.buyer)),
        carWords: row.carWords,
        exemption: row.exemption,
        reason,
        taxes: totals.taxPerRate.map(rate => toJson({ ...rate, name: names.get(keyOf(rate)) ?? say('Tax') })),
        withoutTaxMinor: totals.withoutTaxMinor,
        taxMinor: totals.taxMinor,
        withTaxMinor: totals.withTaxMinor,
        who: desk.who,
        lines: {
          create: lines.flatMap(({ id, name, ratePercent, category }, i) => {
            const amountMinor = now[i]!
            if (amountMinor === 0) return []
            const netMinor = totals.netsMinor[i]!
            return {
              position: i,
              creditsLineId: id,
              name,
              quantity: '1',
              priceMinor: amountMinor,
              amountMinor,
              netMinor,
              ratePercent,
              category,
            }
          }),
        },
      },
    })
    const name = numberWords({ series, number })
    const detail = { credit: name, invoice: numberWords(row), totalMinor: totals.withTaxMinor, reason }
    audit({ act: 'credited', entity: 'job', entityId: row.jobId, detail })
    return { id, name }
  })
}

const keyOf = ({ category, ratePercent }: Pick<RateTotal, 'category' | 'ratePercent'>) =>
  `${category} ${ratePercent}`

function checkedBuyer(buyer: IssueInput['buyer']): Buyer {
  return {
    name: checkText(buyer.name, 'buyer.name', say('Whom it is for'), 120),
    address: checkNote(buyer.address, 'buyer.address', 400),
    country: checkText(buyer.country, 'buyer.country', say('The country'), 2).toUpperCase(),
    email: checkNote(buyer.email, 'buyer.email', 200),
    taxNumber: checkNote(buyer.taxNumber, 'buyer.taxNumber', 40),
  }
}

function sellerOf(shop: ShopView, rules: MoneyRules): Seller {
  const { name, address, country, phone, email } = shop
  return {
    name,
    address: address ?? '',
    country,
    phone: phone === null ? '' : showPhone(phone, country),
    email: email ?? '',
    taxNumber: rules.taxNumber,
    payTo: rules.payTo,
  }
}
