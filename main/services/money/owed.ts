/** Who owes what, since when; and what one customer was billed and paid. */

import { dateOf, dayNumber } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { sumMinor } from '../../domain/money/index.ts'
import { found } from '../../domain/refusal.ts'
import { owedRows } from '../../store/owedRows.ts'
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
  const rows = await owedRows(tx)
  const invoices = await tx.invoice.findMany({
    where: { id: { in: rows.map(row => row.invoiceId) } },
    select: {
      id: true,
      series: true,
      number: true,
      dueOn: true,
      issuedOn: true,
      carWords: true,
      job: { select: { customer: { select: { id: true, name: true, phone: true } } } },
    },
  })
  const byId = new Map(invoices.map(each => [each.id, each]))
  const open = rows.map(({ jobId, owedMinor, invoiceId }) => {
    const { job, dueOn, issuedOn, carWords, ...invoice } = byId.get(invoiceId)!
    return {
      jobId,
      invoiceId,
      name: numberWords(invoice),
      customer: job.customer,
      carWords,
      issuedOn,
      dueOn,
      owedMinor,
      lateDays: owedMinor > 0 && dueOn < today ? dayNumber(today) - dayNumber(dueOn) : 0,
    }
  })
  open.sort(
    (a, b) => b.lateDays - a.lateDays || a.dueOn.localeCompare(b.dueOn) || a.jobId.localeCompare(b.jobId),
  )
  const owing = open.filter(each => each.owedMinor > 0)
  return {
    today,
    currency,
    open: open.slice(0, mostShown),
    count: open.length,
    owedMinor: sumMinor(owing.map(each => each.owedMinor)),
    overdueMinor: sumMinor(owing.filter(each => each.lateDays > 0).map(each => each.owedMinor)),
    overdueCount: owing.filter(each => each.lateDays > 0).length,
  }
}

/** Everything a customer was billed, credited and paid, oldest first, with what was owed after each. */
export async function statement(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const { zone, currency } = await shopOf(tx)
  const customer = found(
    await tx.customer.findUnique({ where: { id } }),
    { id },
    say('This customer is not there.'),
  )
  const [invoices, payments] = await Promise.all([
    tx.invoice.findMany({
      where: { job: { customerId: id } },
      orderBy: [{ issuedAt: 'desc' }, { id: 'desc' }],
      take: 1_000,
    }),
    tx.payment.findMany({
      where: { job: { customerId: id } },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: 1_000,
      include: { job: { select: { number: true } } },
    }),
  ])
  const lines = [
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
  let owedMinor = 0
  return {
    customer: { id, name: customer.name, email: customer.email },
    today: dateOf(desk.now(), zone),
    nowAt: desk.now(),
    currency,
    lines: lines.map(({ at: _, ...line }) => {
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
