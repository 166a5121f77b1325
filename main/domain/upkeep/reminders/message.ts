import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import type { Channel } from './consent.ts'

/**
 * draft: written, nobody has looked. approved: may go out when the rules allow. sending: handed to the server, no
 * answer yet. sent: the server has it. failed: it will not go out without the desk. withdrawn: it will not go out.
 */
export type MessageState = 'draft' | 'approved' | 'sending' | 'sent' | 'failed' | 'withdrawn'

export interface Failure {
  readonly code: 'refused' | 'gave-up' | 'bounced' | 'unknown'
  readonly text: string
  /** Epoch minute. */
  readonly at: number
}

/** One message to one owner about one visit, with all the outbox knows of its fate. */
export interface OutboxMessage {
  /** Stable over every attempt: `messageId`. */
  readonly id: string
  readonly personId: string
  readonly carId: string
  readonly visitId: string
  readonly channel: Channel
  readonly address: string
  /** 1 for the first reminder of a visit, 2 for the second, ... */
  readonly tryNo: number
  readonly subject: string
  readonly body: string
  /** Merge fields nothing was found for. */
  readonly unfilled: readonly string[]
  readonly state: MessageState
  /** How often it was handed to a server. */
  readonly attempts: number
  /** Not before this epoch minute, after a deferral or a rule that said "not yet". */
  readonly notBeforeAt: number | null
  readonly startedAt: number | null
  readonly sentAt: number | null
  readonly failure: Failure | null
  /** How often an attempt ended without an answer: so many copies more may have arrived. */
  readonly unanswered: number
  /** The desk withdrew it while it was on its way: it will not be tried again. */
  readonly stopAsked: boolean
  /** Why it was withdrawn, in words. */
  readonly withdrawnBecause: string | null
}

/** What a draft is made of. */
export type Draft = Pick<
  OutboxMessage,
  'id' | 'personId' | 'carId' | 'visitId' | 'channel' | 'address' | 'tryNo' | 'subject' | 'body' | 'unfilled'
>

/** A draft as the outbox keeps it. */
export function newMessage(draft: Draft): OutboxMessage {
  return {
    ...draft,
    state: 'draft',
    attempts: 0,
    notBeforeAt: null,
    startedAt: null,
    sentAt: null,
    failure: null,
    unanswered: 0,
    stopAsked: false,
    withdrawnBecause: null,
  }
}

/**
 * The Message-ID of a reminder, made from what it is about, so that writing it again gives the same one: the database
 * takes an id once, and a receiving server that is given a copy can tell. (RFC 5322 section 3.6.4: dot-atoms either
 * side of the @.) Signs an id may not hold are written as their code points.
 */
export function messageId(
  about: { readonly visitId: string; readonly channel: Channel; readonly tryNo: number },
  domain: string,
): string {
  if (!/^[a-z0-9-]+(\.[a-z0-9-]+)+$/i.test(domain))
    refuse(
      'domain-bad',
      { domain },
      say('"{domain}" is not a domain for message ids; use the part after the @ of the shop\'s address.', {
        domain,
      }),
    )
  const visit = [...about.visitId]
    .map(sign => (/[A-Za-z0-9-]/.test(sign) ? sign : `_${sign.codePointAt(0)!.toString(16)}_`))
    .join('')
  return `<${visit}.${about.channel}.${about.tryNo}@${domain}>`
}
