/** A day's takings, and the journal of all money for the bookkeeper. */

import { setImmediate as nextTurn } from 'node:timers/promises'
import { dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import {
  type Account,
  creditPostings,
  invoicePostings,
  majorOf,
  type PaymentMethod,
  type Posting,
  paymentMethods,
  paymentPostings,
  type RateTotal,
  sumMinor,
} from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { defused } from '../../domain/tables/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { byteOrderMark, csvText } from '../desk/csv.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { JournalInput } from './inputs.ts'
import { paperWords } from './owed.ts'

/** What came in on a day, by the way it was paid, with what was issued that day. */
export async function takings(desk: Desk, { date }: { date: string }) {
  const tx = desk.store.read
  const { zone, currency } = await shopOf(tx)
  const within = dayWithin(date, date, zone)
  const [payments, invoices] = await Promise.all([
    tx.payment.findMany({
      where: { at: within },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      include: { job: { select: { number: true, customer: { select: { name: true } } } } },
    }),
    tx.invoice.findMany({ where: { issuedAt: within }, select: { kind: true, withTaxMinor: true } }),
  ])
  const came = (each: (typeof payments)[number]) =>
    sumMinor([each.amountMinor, each.tipMinor, each.roundingMinor])
  const issued = (kind: string) => {
    const those = invoices.filter(each => each.kind === kind)
    return { count: those.length, minor: sumMinor(those.map(each => each.withTaxMinor)) }
  }
  return {
    date,
    zone,
    currency,
    ways: paymentMethods.map(method => ({
      method,
      minor: sumMinor(payments.filter(each => each.method === method).map(came)),
    })),
    totalMinor: sumMinor(payments.map(came)),
    depositsMinor: sumMinor(payments.filter(each => each.before).map(each => each.amountMinor)),
    tipsMinor: sumMinor(payments.map(each => each.tipMinor)),
    roundingMinor: sumMinor(payments.map(each => each.roundingMinor)),
    payments: payments.map(({ id, jobId, at, method, amountMinor, tipMinor, before, job, note }) => ({
      id,
      jobId,
      at,
      method: method as PaymentMethod,
      amountMinor,
      tipMinor,
      before,
      note,
      jobNumber: job.number,
      customerName: job.customer.name,
    })),
    invoices: issued('invoice'),
    credits: issued('credit'),
  }
}

/** The minutes of these days; at most four years of them, so that a list stays one that can be opened. */
function dayWithin(fromDate: string, toDate: string, zone: string) {
  const after = Temporal.PlainDate.from(toDate).add({ days: 1 })
  if (toDate < fromDate)
    refuse('dates-swapped', { toDate }, say('The last day is before the first; swap them.'))
  if (after.since(fromDate, { largestUnit: 'day' }).days > 4 * 366)
    refuse('dates-far', { toDate }, say('That is more than four years; ask for a shorter time.'))
  return { gte: startOfDay(fromDate, zone), lt: startOfDay(after.toString(), zone) }
}

const accountWords: Record<Account, string> = {
  cash: word('Cash'),
  card: word('Card payments'),
  transfer: word('Bank'),
  other: word('Other payments'),
  owed: word('Customers owe'),
  deposits: word('Customer deposits'),
  sales: word('Sales'),
  tax: word('Tax to pay'),
  tips: word('Tips for the crew'),
  rounding: word('Cash rounding'),
}

/** The journal as double entries, oldest first: each entry's debits are its credits. */
export async function journalEntries(tx: Tx, { fromDate, toDate }: JournalInput) {
  const { zone, currency } = await shopOf(tx)
  const { gte, lt } = dayWithin(fromDate, toDate, zone)
  const entries: JournalEntry[] = []
  // A month at a time, with a turn for other windows in between: years of a large shop are thousands of entries.
  for (let fromAt = gte; fromAt < lt; fromAt += month) {
    entries.push(...(await entriesWithin(tx, { gte: fromAt, lt: Math.min(lt, fromAt + month) })))
    await nextTurn()
  }
  return { zone, currency, entries }
}

const month = 30 * 1440

interface JournalEntry {
  id: string
  at: number
  words: string
  who: string
  postings: readonly Posting[]
}

const whose = { job: { select: { number: true, customer: { select: { name: true } } } } } as const

async function entriesWithin(tx: Tx, within: { gte: number; lt: number }): Promise<JournalEntry[]> {
  const [invoices, payments] = await Promise.all([
    tx.invoice.findMany({
      where: { issuedAt: within },
      select: {
        id: true,
        kind: true,
        issuedAt: true,
        series: true,
        number: true,
        taxes: true,
        depositMinor: true,
        ...whose,
      },
    }),
    tx.payment.findMany({ where: { at: within }, include: whose }),
  ])
  return [
    ...invoices.map(({ id, kind, issuedAt, taxes, depositMinor, job, ...row }) => {
      const taxPerRate = fromJson<RateTotal[]>(taxes)
      return {
        id,
        at: issuedAt,
        words: paperWords(kind, row),
        who: job.customer.name,
        postings:
          kind === 'invoice' ? invoicePostings({ taxPerRate, depositMinor }) : creditPostings(taxPerRate),
      }
    }),
    ...payments.map(({ id, at, method, job, ...paid }) => ({
      id,
      at,
      words: paid.before
        ? say('Deposit, job {number}', { number: job.number })
        : say('Payment, job {number}', { number: job.number }),
      who: job.customer.name,
      postings: paymentPostings({ ...paid, method: method as PaymentMethod }),
    })),
  ].sort((a, b) => a.at - b.at || a.id.localeCompare(b.id))
}

/** The journal as a list for the bookkeeper. */
export async function journalFile(desk: Desk, input: JournalInput) {
  const { zone, currency, entries } = await journalEntries(desk.store.read, input)
  const money = (minor: number) => (minor > 0 ? majorOf(minor, currency) : '')
  const rows = entries.flatMap(({ at, words, who, postings }, i) =>
    postings.map(({ account, amountMinor, ratePercent = '' }) => [
      String(i + 1),
      dateOf(at, zone),
      words,
      defused(who),
      say(accountWords[account]),
      ratePercent,
      money(amountMinor),
      money(-amountMinor),
      currency,
    ]),
  )
  const head = [
    say('Entry'),
    say('Date'),
    say('Document'),
    say('Customer'),
    say('Account'),
    say('Tax rate'),
    say('Debit'),
    say('Credit'),
    say('Currency'),
  ]
  return {
    name: say('journal {from} to {to}.csv', { from: input.fromDate, to: input.toDate }),
    type: 'text/csv; charset=utf-8',
    keep: true,
    bytes: new TextEncoder().encode(byteOrderMark + csvText([head, ...rows])),
  }
}
