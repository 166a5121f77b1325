/** The electronic invoice of what was issued: checked by the rules of EN 16931 before anybody is given it. */
import { brokenRules, electronicAsked, electronicOf, ublOf } from '../../domain/invoicing/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst, listed } from '../desk/ask.ts'
import type { Desk } from '../desk/desk.ts'
import { type InvoiceView, invoiceView } from './invoiceView.ts'

/** What keeps a paper from being an electronic invoice, each with what to do and the norm's name for it; empty: nothing. */
export function lacksOf(invoice: InvoiceView): string[] {
  return brokenRules(electronicOf(invoice)).map(({ rule, words }) => `${words} (${rule})`)
}

/** An issued paper for its screen, with what its electronic form lacks. */
export async function getInvoice(desk: Desk, { id }: { id: string }) {
  const invoice = await invoiceView(desk.store.read, id)
  return { ...invoice, lacks: lacksOf(invoice) }
}

/** The UBL of an invoice or a credit note as a file. */
export async function electronicFile(desk: Desk, { id }: { id: string }) {
  const invoice = await invoiceView(desk.store.read, id)
  const lacks = lacksOf(invoice)
  if (lacks.length > 0)
    refuse(
      'electronic-lacks',
      { id },
      listed(say('{name} is no electronic invoice:', { name: invoice.name }), lacks),
    )
  const bytes = new TextEncoder().encode(ublOf(electronicOf(invoice)))
  return { name: `${invoice.name}.xml`, type: 'application/xml; charset=utf-8', bytes, keep: true }
}

/** Asks before a paper is issued that could not be handed out electronically in a country that wants it so. */
export async function askOfElectronic(tx: Tx, id: string, accepted: boolean | undefined): Promise<void> {
  const invoice = await invoiceView(tx, id)
  if (!electronicAsked(invoice.seller.country)) return
  askFirst('not-electronic', lacksOf(invoice), {
    field: 'buyer',
    lead: say('It would be paper only: what is issued cannot be completed later.'),
    accepted,
  })
}
