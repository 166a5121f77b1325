/** Invoices and credit notes by what people look for: a number, a name, a plate. */
import type { Desk } from '../desk/desk.ts'
import { numberWords } from './invoiceView.ts'

/** The newest, or those that fit what was typed; a hundred at most. */
export async function findPapers(desk: Desk, { text }: { text: string }) {
  const words = text.trim()
  const number = /(\d{1,9})$/.exec(words)?.[1]
  const rows = await desk.store.read.invoice.findMany({
    where:
      words === ''
        ? {}
        : {
            OR: [
              { carWords: { contains: words } },
              { job: { customer: { name: { contains: words } } } },
              ...(number ? [{ number: Number(number) }] : []),
            ],
          },
    orderBy: [{ issuedAt: 'desc' }, { id: 'desc' }],
    take: 100,
    select: {
      id: true,
      kind: true,
      series: true,
      number: true,
      issuedOn: true,
      carWords: true,
      withTaxMinor: true,
      currency: true,
      job: { select: { customer: { select: { name: true } } } },
    },
  })
  return rows.map(({ series, number, job, kind, ...row }) => ({
    ...row,
    kind: kind as 'invoice' | 'credit',
    name: numberWords({ series, number }),
    customerName: job.customer.name,
  }))
}
