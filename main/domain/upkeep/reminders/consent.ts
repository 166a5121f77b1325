import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

export type Channel = 'email' | 'letter' | 'call' | 'text'

/**
 * One line of the consent ledger. Lines are only ever added: what a person agreed to, when, on which form and in which
 * words must still be there when somebody asks.
 */
export interface ConsentEntry {
  readonly personId: string
  /** A withdrawal may name all channels at once; consent is given for one. */
  readonly channel: Channel | 'all'
  readonly what: 'given' | 'withdrawn'
  /** Epoch minute. */
  readonly at: number
  /** The address it was said of, where it was said of one: a reply to stop@, a number that rang. */
  readonly address: string | null
  /** Where it was said: "intake form", "phone", "reply by e-mail". */
  readonly source: string
  /** The words agreed to, or those of the withdrawal. */
  readonly wording: string
}

export type ConsentState =
  | { readonly given: true; readonly sinceAt: number; readonly source: string; readonly wording: string }
  | {
      readonly given: false
      readonly because: 'never' | 'withdrawn' | 'address-withdrawn'
      readonly at: number | null
    }

/** Refuses lines that would prove nothing: consent for every channel at once, or without source or wording. */
export function checkConsent(entry: ConsentEntry): void {
  if (entry.what === 'given' && entry.channel === 'all')
    refuse(
      'consent-too-wide',
      { channel: entry.channel },
      say('Consent is given for one channel at a time; enter e-mail, letter, call and text each by itself.'),
    )
  for (const name of ['source', 'wording'] as const)
    if (entry.what === 'given' && entry[name].trim() === '')
      refuse(
        `consent-${name}`,
        { [name]: entry[name] },
        name === 'source'
          ? say('Say the source of the consent; it is the proof.')
          : say('Say the wording of the consent; it is the proof.'),
      )
}

/** Addresses are the same when they reach the same place: case and spaces do not count. */
export function sameAddress(a: string, b: string): boolean {
  const plain = (text: string) => text.replace(/\s+/g, '').toLowerCase()
  return plain(a) === plain(b)
}

/**
 * Whether a person agrees, at a moment, to be reached on a channel at an address. The last word counts; at the same
 * minute the withdrawal does. A withdrawal said of an address stops it for everybody who has it, until they agree
 * again. Consent dated after `nowAt` does not count yet; a withdrawal always does.
 */
export function consentState(
  entries: readonly ConsentEntry[],
  personId: string,
  channel: Channel,
  address: string,
  nowAt: number,
): ConsentState {
  let given: ConsentEntry | null = null
  let ownNo: ConsentEntry | null = null
  let addressNo: ConsentEntry | null = null
  for (const entry of entries) {
    if (entry.channel !== channel && entry.channel !== 'all') continue
    const own = entry.personId === personId
    if (entry.what === 'given') {
      if (own && entry.at <= nowAt && (!given || entry.at > given.at)) given = entry
    } else if (own) {
      if (!ownNo || entry.at > ownNo.at) ownNo = entry
    } else if (entry.address !== null && sameAddress(entry.address, address)) {
      if (!addressNo || entry.at > addressNo.at) addressNo = entry
    }
  }
  if (!given) return { given: false, because: ownNo ? 'withdrawn' : 'never', at: ownNo?.at ?? null }
  if (ownNo && ownNo.at >= given.at) return { given: false, because: 'withdrawn', at: ownNo.at }
  if (addressNo && addressNo.at >= given.at)
    return { given: false, because: 'address-withdrawn', at: addressNo.at }
  return { given: true, sinceAt: given.at, source: given.source, wording: given.wording }
}
