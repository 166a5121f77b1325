import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export type MailAddressCheck =
  | { readonly valid: true; readonly address: string }
  | { readonly valid: false; readonly why: string }

// RFC 5321 section 4.1.2: Atom of the Dot-string (atext of RFC 5322 section 3.2.3), and sub-domain.
const atom = /^[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+$/
const label = /^[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?$/

/**
 * Whether text is one e-mail address we write to, with its reason if not. The one check for every way in: desk, import,
 * outbox. Spaces around it are dropped and the domain is lower-cased; the local part keeps its case.
 *
 * The grammar is RFC 5321's (section 4.1.2, lengths 4.5.3.1), narrower in three points, each with its own words: no quoted
 * local part, no address literal, no domain without a dot. Letters beyond ASCII would need SMTPUTF8 all the way, which
 * the shop's server cannot promise, so they are refused too.
 */
export function checkMailAddress(text: string): MailAddressCheck {
  const bad = (why: string) => ({ valid: false, why }) as const
  const address = text.trim()
  const at = address.lastIndexOf('@')
  if (at < 0) return bad(say('An e-mail address has an @ between name and domain.'))
  const local = address.slice(0, at)
  const domain = address.slice(at + 1)

  if (local.startsWith('"'))
    return bad(say('Names in quotation marks are not taken; use the address without them.'))
  if (local === '') return bad(say('The name before the @ is missing.'))
  if (/[^\x20-\x7e]/.test(address))
    return bad(say('Only plain letters, digits and signs are taken; no accents or line ends.'))
  if (local.length > 64)
    return bad(say('The name before the @ has {local} characters; 64 is the most.', { local: local.length }))
  if (!local.split('.').every(each => atom.test(each)))
    return bad(
      say('The name before the @ has a space, a sign that is not allowed, or a dot at an end or doubled.'),
    )

  if (domain.startsWith('[')) return bad(say('A number in brackets is not taken; use the domain name.'))
  if (domain === '') return bad(say('The domain after the @ is missing.'))
  if (domain.length > 255 || address.length > 254)
    return bad(say('The address has {address} characters; 254 is the most.', { address: address.length }))
  if (!domain.includes('.'))
    return bad(say('The domain after the @ has no dot; something like .com is missing.'))
  if (!domain.split('.').every(each => label.test(each)))
    return bad(
      say(
        'The domain after the @ may hold letters, digits and inner hyphens only, with single dots between.',
      ),
    )
  return { valid: true, address: `${local}@${domain.toLowerCase()}` }
}

/** The address as it is stored; refused with the reason and the field where it is none. */
export function readMailAddress(text: string, field = 'email'): string {
  const check = checkMailAddress(text)
  if (!check.valid)
    refuse(
      'mail-address-bad',
      { [field]: text },
      say('"{text}" is not an address: {why}', { text: text.slice(0, 80), why: check.why }),
    )
  return check.address
}
