import { ownerLetterPdf } from '../../documents/ownerLetter.ts'
import { zonedOf } from '../../domain/calendar/index.ts'
import { say, writtenIn } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { shopOf } from '../desk/shopView.ts'

/** The PDF of a letter that was approved, to fold into a window envelope. */
export async function ownerLetter(desk: Desk, input: { messageId: string }) {
  const tx = desk.store.read
  const row = await tx.message.findUnique({
    where: { id: input.messageId },
    include: { customer: { include: { reach: true } } },
  })
  if (row?.channel !== 'letter')
    refuse('missing', { messageId: input.messageId }, say('There is no such letter; look at the list again.'))
  if (row.state !== 'approved' && row.state !== 'sent')
    refuse(
      'not-approved',
      { messageId: input.messageId },
      say('This letter is not approved: approve it in the batch first.'),
    )
  const shop = await shopOf(tx)
  const at = row.sentAt ?? desk.now()
  const bytes = await ownerLetterPdf({
    at,
    ...(await letterheadOf(tx)),
    to: [
      row.customer.name,
      ...(row.customer.reach?.postal ?? row.address).split(/\r?\n/),
      ...abroad(row.customer.reach?.country ?? null, shop.country),
    ],
    dayWords: zonedOf(at, shop.zone).toLocaleString(writtenIn(row.language).locale, { dateStyle: 'long' }),
    language: row.language,
    subject: row.subject,
    body: row.body,
  })
  return { name: `letter-${row.customer.name}.pdf`, type: 'application/pdf', bytes }
}

/**
 * The last line of an address in another country: its name in capitals, in a language the country of posting reads.
 * Source: Universal Postal Union, Convention Regulations, on addressing (from memory).
 */
function abroad(country: string | null, from: string): string[] {
  if (country === null || country === from) return []
  const names = new Intl.DisplayNames(['en'], { type: 'region' })
  return [(names.of(country) ?? country).toUpperCase()]
}
