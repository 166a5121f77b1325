import { paperOf } from '../../documents/kit/pdf.ts'
import { ownerLetterPdf } from '../../documents/ownerLetter.ts'
import { zonedOf } from '../../domain/calendar/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import { issuerOf } from '../desk/issuer.ts'
import { shopOf } from '../desk/shopView.ts'

/** The PDF of a letter that was approved, to fold into a window envelope. */
export async function ownerLetter(desk: Desk, input: { messageId: string }) {
  const tx = desk.store.read
  const row = await tx.message.findUnique({
    where: { id: input.messageId },
    include: { customer: { include: { reach: true } } },
  })
  if (row?.channel !== 'letter')
    refuse('missing', { messageId: input.messageId }, 'There is no such letter; look at the list again.')
  if (row.state !== 'approved' && row.state !== 'sent')
    refuse(
      'not-approved',
      { messageId: input.messageId },
      'This letter is not approved: approve it in the batch first.',
    )
  const shop = await shopOf(tx)
  const at = row.sentAt ?? desk.now()
  const bytes = await ownerLetterPdf({
    at,
    paper: paperOf(shop.country),
    issuer: await issuerOf(tx, shop),
    to: [row.customer.name, ...(row.customer.reach?.postal ?? row.address).split(/\r?\n/)],
    dayWords: zonedOf(at, shop.zone).toLocaleString(row.language, { dateStyle: 'long' }),
    language: row.language,
    subject: row.subject,
    body: row.body,
  })
  return { name: `letter-${row.customer.name}.pdf`, type: 'application/pdf', bytes }
}
