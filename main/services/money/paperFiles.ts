/** Invoices, credit notes and statements as files to print and send. */

import { invoicePdf } from '../../documents/invoicePdf.ts'
import type { Issuer } from '../../documents/kit/frame.ts'
import { quotePdf } from '../../documents/quotePdf.ts'
import { statementPdf } from '../../documents/statementPdf.ts'
import { dateOf, momentWords, weekdayDate } from '../../domain/calendar/index.ts'
import { brokenRules, ciiOf, electronicOf } from '../../domain/invoicing/index.ts'
import { decimalNow, say } from '../../domain/language/index.ts'
import { plainMoney } from '../../domain/money/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { speakingTo, speakingToOwner } from '../desk/speaking.ts'
import { type InvoiceView, invoiceView } from './invoiceView.ts'
import { statement } from './owed.ts'
import { quoteView } from './quotes.ts'

/** The PDF of an invoice or a credit note, from what was kept when it was issued. */
export async function invoiceFile(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const invoice = await invoiceView(tx, id)
  const bytes = await speakingToOwner(tx, invoice.jobId, async () =>
    invoicePdf(await invoiceSheet(tx, invoice)),
  )
  return { name: `${invoice.name}.pdf`, type: 'application/pdf', bytes }
}

/**
 * What is printed of an invoice. The head bears the shop as it was then; its logo, colour and paper are of today. Inside
 * goes the electronic invoice, where nothing it needs is missing.
 */
export async function invoiceSheet(tx: Tx, invoice: InvoiceView) {
  const { issuer: today, paper } = await letterheadOf(tx)
  const { seller, buyer, currency, corrects } = invoice
  const electronic = electronicOf(invoice)
  const money = (minor: number) => plainMoney(minor, currency)
  const credit = invoice.kind === 'credit'
  const issuer: Issuer = {
    ...today,
    name: seller.name,
    lines: [
      ...seller.address.split(/\r?\n/),
      seller.phone,
      seller.email,
      seller.taxNumber && say('Tax number {taxNumber}', { taxNumber: seller.taxNumber }),
    ],
  }
  const noTax = [
    invoice.taxPerRate.some(rate => rate.category === 'AE') ? say('Reverse charge') : '',
    invoice.exemption,
  ]
    .filter(Boolean)
    .join('\n')
  const taxed = invoice.taxPerRate.some(rate => rate.category === 'S')
  return {
    title: credit
      ? say('Credit note {name}', { name: invoice.name })
      : say('Invoice {name}', { name: invoice.name }),
    reference: credit
      ? say('credit note {name}', { name: invoice.name })
      : say('invoice {name}', { name: invoice.name }),
    at: invoice.issuedAt,
    paper,
    issuer,
    to: [
      buyer.name,
      ...buyer.address.split(/\r?\n/),
      buyer.taxNumber && say('Tax number {taxNumber}', { taxNumber: buyer.taxNumber }),
    ],
    facts: [
      [say('Date'), weekdayDate(invoice.issuedOn)],
      ...(corrects
        ? [[say('For invoice'), `${corrects.name}, ${weekdayDate(corrects.issuedOn)}`] as const]
        : []),
      ...(credit ? [] : [[say('Work done'), weekdayDate(invoice.suppliedOn)] as const]),
      ...(credit ? [] : [[say('Pay by'), weekdayDate(invoice.dueOn)] as const]),
      [say('Car'), invoice.carWords],
      [say('Job'), String(invoice.jobNumber)],
    ] as [string, string][],
    lines: invoice.lines.map(line => ({
      name: line.name,
      under:
        line.discountMinor > 0
          ? say('{discountMinor} off: {discountReason}', {
              discountMinor: money(line.discountMinor),
              discountReason: line.discountReason,
            })
          : '',
      quantity: decimalNow(line.quantity),
      price: money(line.priceMinor),
      rate: line.category === 'S' ? `${decimalNow(line.ratePercent)} %` : '—',
      amount: money(line.amountMinor),
    })),
    totals: [
      ...(invoice.allowanceMinor > 0
        ? [
            {
              name: say('Off: {reason}', { reason: invoice.allowanceReason }),
              amount: money(-invoice.allowanceMinor),
            },
          ]
        : []),
      ...(taxed ? [{ name: say('Without tax'), amount: money(invoice.withoutTaxMinor) }] : []),
      ...invoice.taxPerRate.map(({ name, category, ratePercent, baseMinor, taxMinor }) => ({
        name:
          category === 'S'
            ? say('{tax} {percent} % on {base}', {
                tax: name,
                percent: decimalNow(ratePercent),
                base: money(baseMinor),
              })
            : say('{tax} on {base}', { tax: name, base: money(baseMinor) }),
        amount: money(taxMinor),
      })),
      { name: credit ? say('Given back') : say('Total'), amount: money(invoice.withTaxMinor), strong: true },
      ...(invoice.depositMinor > 0
        ? [{ name: say('Deposit paid'), amount: money(-invoice.depositMinor) }]
        : []),
      ...(invoice.carriedMinor > 0
        ? [{ name: say('Paid already'), amount: money(-invoice.carriedMinor) }]
        : []),
      ...(invoice.dueMinor !== invoice.withTaxMinor
        ? [{ name: say('To pay'), amount: money(invoice.dueMinor), strong: true }]
        : []),
    ],
    currency,
    words: [
      ...(invoice.taxInPrices && taxed ? [{ heading: say('Tax'), text: say('Prices include tax.') }] : []),
      ...(noTax === '' ? [] : [{ heading: say('No tax is charged'), text: noTax }]),
      ...(invoice.reason ? [{ heading: say('Why'), text: invoice.reason }] : []),
      ...(invoice.note ? [{ heading: say('Note'), text: invoice.note }] : []),
      ...(!credit && seller.payTo ? [{ heading: say('How to pay'), text: seller.payTo }] : []),
    ],
    xml: brokenRules(electronic).length === 0 ? ciiOf(electronic) : null,
  }
}

/** The PDF of what a customer was billed and paid, as of today. */
export function statementFile(desk: Desk, { id }: { id: string }) {
  return speakingTo(desk.store.read, id, () => statementIn(desk, id))
}

async function statementIn(desk: Desk, id: string) {
  const tx = desk.store.read
  const { customer, lines, owedMinor, currency, today, nowAt } = await statement(desk, { id })
  const bytes = await statementPdf({
    at: nowAt,
    dayWords: weekdayDate(today),
    ...(await letterheadOf(tx)),
    to: [customer.name],
    currency,
    lines: lines.map(({ date, words, about, minor, owedMinor }) => ({
      day: weekdayDate(date),
      words,
      about,
      amount: plainMoney(minor, currency),
      open: plainMoney(owedMinor, currency),
    })),
    open: plainMoney(owedMinor, currency),
  })
  return { name: `${say('statement')} ${today}.pdf`, type: 'application/pdf', bytes }
}

/** The PDF of a quote, with the signature once there is one. */
export async function quoteFile(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const { customer } = await quoteView(tx, desk.now(), id)
  return speakingTo(tx, customer.id, () => quoteIn(desk, id))
}

async function quoteIn(desk: Desk, id: string) {
  const tx = desk.store.read
  const quote = await quoteView(tx, desk.now(), id)
  const money = (minor: number) => plainMoney(minor, quote.currency)
  const when = (at: number) => momentWords(at, quote.zone)
  const bytes = await quotePdf({
    number: quote.number,
    at: quote.createdAt,
    ...(await letterheadOf(tx)),
    to: [quote.customer.name],
    facts: [
      [say('Car'), quote.carName],
      [say('Date'), weekdayDate(dateOf(quote.createdAt, quote.zone))],
      [say('Good until'), weekdayDate(quote.validUntil)],
    ],
    currency: quote.currency,
    variants: quote.variants.map(variant => ({
      name:
        variant.position === quote.accepted ? say('{name}, chosen', { name: variant.name }) : variant.name,
      lines: [
        ...variant.treatments.map(each => ({ words: each.name, amount: money(each.priceMinor) })),
        ...variant.charges.map(({ kind, quantity, words, amountMinor }) => ({
          words: quantity === '1' ? words : `${decimalNow(quantity)} × ${words}`,
          amount: money(kind === 'extra' ? Math.round(amountMinor * Number(quantity)) : -amountMinor),
        })),
      ],
      total: money(variant.priceMinor),
      facts: [
        [
          say('Lasts about'),
          variant.lasts
            .map(each =>
              say('{name}: {days} days ({mark})', { name: each.name, days: each.days, mark: say(each.mark) }),
            )
            .join('; '),
        ],
        [say('Days away'), String(variant.daysAway)],
        [
          say('Upkeep in 3 years'),
          variant.upkeepVisits === 0
            ? ''
            : variant.upkeepMinor === null
              ? say('{visits} visits', { visits: variant.upkeepVisits })
              : say('{visits} visits, {price} today', {
                  visits: variant.upkeepVisits,
                  price: money(variant.upkeepMinor),
                }),
        ],
        [
          say('Soonest place when quoted'),
          say('{dropOffAt}, home {handoverAt}', {
            dropOffAt: when(variant.dropOffAt),
            handoverAt: when(variant.handoverAt),
          }),
        ],
      ],
    })),
    note: [
      quote.note,
      quote.taxInPrices ? say('Prices include tax.') : say('Tax comes on top of these prices.'),
    ]
      .filter(Boolean)
      .join('\n'),
    signed:
      quote.signedAt === null
        ? null
        : {
            words: `${quote.signedName}, ${when(quote.signedAt)}`,
            png: quote.signature.startsWith(pngAddress)
              ? Buffer.from(quote.signature.slice(pngAddress.length), 'base64')
              : null,
          },
  })
  return { name: `quote-${quote.number}.pdf`, type: 'application/pdf', bytes }
}

const pngAddress = 'data:image/png;base64,'
