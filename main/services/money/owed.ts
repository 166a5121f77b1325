/** Who owes what, since when; and what one customer was billed and paid. */

import { dateOf, dayNumber } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { sumMinor } from '../../domain/money/index.ts'
import { found } from '../../domain/refusal.ts'
import { owedByCustomer, owedRows } from '../../store/owedRows.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { numberWords } from './invoiceView.ts'

/** Shown at most; the sum is of all of them. */
const mostShown = 300

/** The open invoices, the longest overdue first; what the shop owes customers behind them. */
export async function owedList(desk: Desk) {
  const tx = desk.store.read
  const { zone, currency } = await shopOf(tx)
  const today = dateOf(desk.now(), zone)
  const rows = (await owedRows(tx)).map(row => ({
    ...row,
    lateDays: row.owedMinor > 0 && row.dueOn < today ? dayNumber(today) - dayNumber(row.dueOn) : 0,
  }))
  rows.sort(
    (a, b) => b.lateDays - a.lateDays || a.dueOn.localeCompare(b.dueOn) || a.jobId.localeCompare(b.jobId),
  )
  const shown = rows.slice(0, mostShown)
  const invoices = await tx.invoice.findMany({
    where: { id: { in: shown.map(row => row.invoiceId) } },
    select: {
      id: true,
      series: true,
      number: true,
      issuedOn: true,
      carWords: true,
      job: { select: { customer: { select: { id: true, name: true, phone: true } } } },
    },
  })
  const byId = new Map(invoices.map(each => [each.id, each]))
  const owing = rows.filter(each => each.owedMinor > 0)
  return {
    today,
    currency,
    open: shown.map(row => {
      const { job, issuedOn, carWords, ...invoice } = byId.get(row.invoiceId)!
      return { ...row, name: numberWords(invoice), customer: job.customer, carWords, issuedOn }
    }),
    count: rows.length,
    owedMinor: sumMinor(owing.map(each => each.owedMinor)),
    overdueMinor: sumMinor(owing.filter(each => each.lateDays > 0).map(each => each.owedMinor)),
    overdueCount: owing.filter(each => each.lateDays > 0).length,
  }
}

/** Lines of a statement at most; what came before them stands as one line. */
const mostLines = 1_000

/** Everything a customer was billed, credited and paid, oldest first, with what was owed after each. */
export async function statement(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const { zone, currency } = await shopOf(tx)
  const customer = found(
    await tx.customer.findUnique({ where: { id } }),
    { id },
    say('This customer is not there.'),
  )
  const [invoices, payments, wholeMinor] = await Promise.all([
    tx.invoice.findMany({
      where: { job: { customerId: id } },
      orderBy: [{ issuedAt: 'desc' }, { id: 'desc' }],
      take: mostLines,
      select: {
        id: true,
        kind: true,
        issuedAt: true,
        issuedOn: true,
        withTaxMinor: true,
        carWords: true,
        series: true,
        number: true,
      },
    }),
    tx.payment.findMany({
      where: { job: { customerId: id } },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: mostLines,
      include: { job: { select: { number: true } } },
    }),
    owedByCustomer(tx, id),
  ])
  const all = [
    ...invoices.map(({ id, kind, issuedAt, issuedOn, withTaxMinor, carWords, series, number }) => ({
      key: id,
      at: issuedAt,
      date: issuedOn,
      words: paperWords(kind, { series, number }),
      about: carWords,
      invoiceId: id as string | null,
      minor: kind === 'invoice' ? withTaxMinor : -withTaxMinor,
    })),
    ...payments.map(({ id, at, amountMinor, method, note, before, job }) => ({
      key: id,
      at,
      date: dateOf(at, zone),
      words: amountMinor < 0 ? say('Paid back') : before ? say('Deposit') : say('Payment'),
      about: [say(methodWords[method] ?? method), say('job {number}', { number: job.number }), note]
        .filter(Boolean)
        .join(', '),
      invoiceId: null,
      minor: -amountMinor,
    })),
  ].sort((a, b) => a.at - b.at || a.key.localeCompare(b.key))
  const shown = all.slice(-mostLines)
  const carriedMinor = wholeMinor - sumMinor(shown.map(line => line.minor))
  const first = shown[0]
  const carried =
    all.length === shown.length || !first
      ? []
      : [
          {
            key: 'carried',
            at: first.at,
            date: first.date,
            words: say('Carried forward'),
            about: '',
            invoiceId: null,
            minor: carriedMinor,
          },
        ]
  let owedMinor = 0
  return {
    customer: { id, name: customer.name, email: customer.email },
    today: dateOf(desk.now(), zone),
    nowAt: desk.now(),
    currency,
    lines: [...carried, ...shown].map(({ at: _, ...line }) => {
      owedMinor += line.minor
      return { ...line, owedMinor }
    }),
    owedMinor,
  }
}

/** `Invoice INV-0042`, `Credit note CN-0007`. */
export function paperWords(kind: string, paper: { series: string; number: number }): string {
  const name = numberWords(paper)
  return kind === 'invoice' ? say('Invoice {name}', { name }) : say('Credit note {name}', { name })
}

export const methodWords: Readonly<Record<string, string>> = {
  cash: word('cash'),
  card: word('card'),
  transfer: word('bank transfer'),
  other: word('other way'),
}
