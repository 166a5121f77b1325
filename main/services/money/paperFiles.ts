/** Invoices, credit notes and statements as files to print and send. */
import { invoicePdf } from '../../documents/invoicePdf.ts'
import type { Issuer } from '../../documents/kit/frame.ts'
import { paperOf } from '../../documents/kit/pdf.ts'
import { quotePdf } from '../../documents/quotePdf.ts'
import { statementPdf } from '../../documents/statementPdf.ts'
import { dateOf, momentWords, weekdayDate } from '../../domain/calendar/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { issuerOf } from '../desk/issuer.ts'
import { shopOf } from '../desk/shopView.ts'
import { plainMoney } from '../shelf/words.ts'
import { type InvoiceView, invoiceView } from './invoiceView.ts'
import { statement } from './owed.ts'
import { quoteView } from './quotes.ts'

/** The PDF of an invoice or a credit note, from what was kept when it was issued. */
export async function invoiceFile(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const invoice = await invoiceView(tx, id)
  const bytes = await invoicePdf(await invoiceSheet(tx, invoice))
  return { name: `${invoice.name}.pdf`, type: 'application/pdf', bytes }
}

/** What is printed of an invoice. The head bears the shop as it was then; its logo and colour are of today. */
export async function invoiceSheet(tx: Tx, invoice: InvoiceView) {
  const shop = await shopOf(tx)
  const { seller, buyer, currency, corrects } = invoice
  const money = (minor: number) => plainMoney(minor, currency)
  const credit = invoice.kind === 'credit'
  const issuer: Issuer = {
    ...(await issuerOf(tx, shop)),
    name: seller.name,
    lines: [
      ...seller.address.split(/\r?\n/),
      seller.phone,
      seller.email,
      seller.taxNumber && `Tax number ${seller.taxNumber}`,
    ],
  }
  const taxed = invoice.taxPerRate.some(rate => rate.category === 'S')
  return {
    title: `${credit ? 'Credit note' : 'Invoice'} ${invoice.name}`,
    at: invoice.issuedAt,
    paper: paperOf(seller.country),
    issuer,
    to: [buyer.name, ...buyer.address.split(/\r?\n/), buyer.taxNumber && `Tax number ${buyer.taxNumber}`],
    facts: [
      ['Date', weekdayDate(invoice.issuedOn)],
      ...(corrects ? [['For invoice', `${corrects.name}, ${weekdayDate(corrects.issuedOn)}`] as const] : []),
      ...(credit ? [] : [['Work done', weekdayDate(invoice.suppliedOn)] as const]),
      ...(credit ? [] : [['Pay by', weekdayDate(invoice.dueOn)] as const]),
      ['Car', invoice.carWords],
      ['Job', String(invoice.jobNumber)],
    ] as [string, string][],
    lines: invoice.lines.map(line => ({
      name: line.name,
      under: line.discountMinor > 0 ? `${money(line.discountMinor)} off: ${line.discountReason}` : '',
      quantity: line.quantity,
      price: money(line.priceMinor),
      rate: line.category === 'S' ? `${line.ratePercent} %` : '—',
      amount: money(line.amountMinor),
    })),
    totals: [
      ...(invoice.allowanceMinor > 0
        ? [{ name: `Off: ${invoice.allowanceReason}`, amount: money(-invoice.allowanceMinor) }]
        : []),
      ...(taxed ? [{ name: 'Without tax', amount: money(invoice.withoutTaxMinor) }] : []),
      ...invoice.taxPerRate.map(({ name, category, ratePercent, baseMinor, taxMinor }) => ({
        name: `${name}${category === 'S' ? ` ${ratePercent} %` : ''} on ${money(baseMinor)}`,
        amount: money(taxMinor),
      })),
      { name: credit ? 'Given back' : 'Total', amount: money(invoice.withTaxMinor), strong: true },
      ...(invoice.depositMinor > 0
        ? [
            { name: 'Deposit paid', amount: money(-invoice.depositMinor) },
            { name: 'To pay', amount: money(invoice.dueMinor), strong: true },
          ]
        : []),
    ],
    currency,
    words: [
      ...(invoice.taxInPrices && taxed ? [{ heading: 'Tax', text: 'Prices have their tax in them.' }] : []),
      ...(invoice.exemption ? [{ heading: 'No tax is charged', text: invoice.exemption }] : []),
      ...(invoice.reason ? [{ heading: 'Why', text: invoice.reason }] : []),
      ...(invoice.note ? [{ heading: 'Note', text: invoice.note }] : []),
      ...(!credit && seller.payTo ? [{ heading: 'How to pay', text: seller.payTo }] : []),
    ],
  }
}

/** The PDF of what a customer was billed and paid, as of today. */
export async function statementFile(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const shop = await shopOf(tx)
  const { customer, lines, owedMinor, currency, today, nowAt } = await statement(desk, { id })
  const bytes = await statementPdf({
    at: nowAt,
    dayWords: weekdayDate(today),
    paper: paperOf(shop.country),
    issuer: await issuerOf(tx, shop),
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
  return { name: `statement ${today}.pdf`, type: 'application/pdf', bytes }
}

/** The PDF of a quote, with the signature once there is one. */
export async function quoteFile(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const shop = await shopOf(tx)
  const quote = await quoteView(tx, desk.now(), id)
  const money = (minor: number) => plainMoney(minor, quote.currency)
  const when = (at: number) => momentWords(at, quote.zone)
  const bytes = await quotePdf({
    number: quote.number,
    at: quote.createdAt,
    paper: paperOf(shop.country),
    issuer: await issuerOf(tx, shop),
    to: [quote.customer.name],
    facts: [
      ['Car', quote.carName],
      ['Date', weekdayDate(dateOf(quote.createdAt, quote.zone))],
      ['Good until', weekdayDate(quote.validUntil)],
    ],
    currency: quote.currency,
    variants: quote.variants.map(variant => ({
      name: variant.position === quote.accepted ? `${variant.name}, chosen` : variant.name,
      lines: [
        ...variant.treatments.map(each => ({ words: each.name, amount: money(each.priceMinor) })),
        ...variant.charges.map(({ kind, quantity, words, amountMinor }) => ({
          words: quantity === '1' ? words : `${quantity} × ${words}`,
          amount: money(kind === 'extra' ? Math.round(amountMinor * Number(quantity)) : -amountMinor),
        })),
      ],
      total: money(variant.priceMinor),
      facts: [
        [
          'Lasts about',
          variant.lasts.map(each => `${each.name}: ${each.days} days (${each.mark})`).join('; '),
        ],
        ['Days away', String(variant.daysAway)],
        [
          'Upkeep in 3 years',
          variant.upkeepVisits === 0
            ? ''
            : `${variant.upkeepVisits} visits${variant.upkeepMinor === null ? '' : `, ${money(variant.upkeepMinor)} today`}`,
        ],
        ['Soonest place when quoted', `${when(variant.dropOffAt)}, home ${when(variant.handoverAt)}`],
      ],
    })),
    note: [
      quote.note,
      quote.taxInPrices ? 'Prices have their tax in them.' : 'Tax comes on top of these prices.',
    ]
      .filter(Boolean)
      .join('\n'),
    signed:
      quote.signedAt === null || !quote.signature.startsWith(pngAddress)
        ? null
        : {
            words: `${quote.signedName}, ${when(quote.signedAt)}`,
            png: Buffer.from(quote.signature.slice(pngAddress.length), 'base64'),
          },
  })
  return { name: `quote-${quote.number}.pdf`, type: 'application/pdf', bytes }
}

const pngAddress = 'data:image/png;base64,'
