import { say, word } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { orWords } from '../../words.ts'
import { BACK_OFF, type BackOff, waitAfter } from './backOff.ts'
import { maySend, type SendDecision, type SendQuestion } from './maySend.ts'
import type { MessageState, OutboxMessage } from './message.ts'

/**
 * What becomes of a message whose sending broke off without an answer: the machine stopped, or the line went dead
 * after the text was handed over. Nobody can know whether it arrived. `again`: it is sent once more, so none is lost
 * and one may arrive twice. `ask`: it stops as failed until the desk decides, so none arrives twice and one may be lost.
 */
export type CrashRisk = 'again' | 'ask'

/**
 * The risk this project takes unless the shop chooses otherwise: a reminder that is lost costs the car its protection
 * and nobody notices; one that comes twice is a nuisance. It carries the same Message-ID, and only one message is on
 * its way at a time, so a stop of the machine can double one message at the most.
 */
export const CRASH_RISK: CrashRisk = 'again'

/** The risk in words for the desk. */
export const CRASH_RISK_WORDS: Readonly<Record<CrashRisk, string>> = {
  again: word(
    'After an interruption an unanswered message is sent again: none is lost, but that one may arrive twice.',
  ),
  ask: word(
    'After an interruption an unanswered message waits for you: none arrives twice, but that one may be lost.',
  ),
}

const stateNames: Readonly<Record<MessageState, string>> = {
  draft: word('draft||message'),
  approved: word('approved||message'),
  sending: word('sending||message'),
  sent: word('sent||message'),
  failed: word('failed||message'),
  withdrawn: word('withdrawn||message'),
}

function need(message: OutboxMessage, states: readonly MessageState[], doing: string) {
  if (!states.includes(message.state))
    refuse(
      'message-state',
      { state: message.state },
      say('A message that is {state} cannot be {doing}; it has to be {states}.', {
        state: say(stateNames[message.state]),
        doing,
        states: orWords(states.map(state => say(stateNames[state]))),
      }),
    )
}

/** The desk lets a draft go out. Refuses one with fields nothing was found for. */
export function approve(message: OutboxMessage): OutboxMessage {
  need(message, ['draft'], say('approved||message'))
  if (message.unfilled.length > 0)
    refuse(
      'unfilled',
      { unfilled: message.unfilled },
      say('Nothing is known for: {unfilled}. Fill it in or take it out of the text.', {
        unfilled: message.unfilled.join(', '),
      }),
    )
  return { ...message, state: 'approved' }
}

/** The desk changes the words: the approval was for the old ones, so it is a draft again. */
export function revise(
  message: OutboxMessage,
  words: Pick<OutboxMessage, 'subject' | 'body' | 'unfilled'>,
): OutboxMessage {
  need(message, ['draft', 'approved', 'failed'], say('changed||message'))
  return { ...message, ...words, state: 'draft', failure: null }
}

/** It shall not go out. One already on its way cannot be called back, but is not tried again. */
export function withdraw(message: OutboxMessage, because: string): OutboxMessage {
  need(message, ['draft', 'approved', 'failed', 'sending'], say('withdrawn||message'))
  if (message.state === 'sending') return { ...message, stopAsked: true, withdrawnBecause: because }
  return { ...message, state: 'withdrawn', withdrawnBecause: because }
}

/**
 * Hands a message to the server, if it may go out now: the only way into `sending`. Where it may not, it stays
 * approved until the moment given, or is withdrawn with the reason when no moment will do.
 */
export function beginSending(question: SendQuestion): { message: OutboxMessage; decision: SendDecision } {
  const { message, nowAt } = question
  need(message, ['approved'], say('sent||message'))
  const decision = maySend(question)
  if (decision.ok)
    return {
      decision,
      message: {
        ...message,
        state: 'sending',
        attempts: message.attempts + 1,
        startedAt: nowAt,
        notBeforeAt: null,
      },
    }
  if (decision.againAt === null) return { decision, message: withdraw(message, decision.sentence) }
  return { decision, message: { ...message, notBeforeAt: decision.againAt } }
}

/** The server has taken it. */
export function accepted(message: OutboxMessage, at: number): OutboxMessage {
  need(message, ['sending'], say('taken by the server'))
  return { ...message, state: 'sent', startedAt: null, sentAt: at, failure: null }
}

/** The server will not have it, now or ever. */
export function refused(message: OutboxMessage, at: number, text: string): OutboxMessage {
  need(message, ['sending'], say('refused by the server'))
  return { ...message, state: 'failed', startedAt: null, failure: { code: 'refused', text, at } }
}

/** The server said "later", or was not there: it waits for its next attempt, or is given up. */
export function deferred(
  message: OutboxMessage,
  at: number,
  text: string,
  backOff: BackOff = BACK_OFF,
): OutboxMessage {
  need(message, ['sending'], say('deferred||message'))
  if (message.stopAsked) return { ...message, state: 'withdrawn', startedAt: null }
  const waitMin = waitAfter(message.attempts, backOff)
  if (waitMin === null)
    return { ...message, state: 'failed', startedAt: null, failure: { code: 'gave-up', text, at } }
  return { ...message, state: 'approved', startedAt: null, notBeforeAt: at + waitMin }
}

/** Nothing was wrong with the message: the shop's own settings are. It waits as it was, the attempt not counted. */
export function putBack(message: OutboxMessage): OutboxMessage {
  need(message, ['sending'], say('put back'))
  if (message.stopAsked) return { ...message, state: 'withdrawn', startedAt: null }
  return { ...message, state: 'approved', startedAt: null, attempts: message.attempts - 1 }
}

/** The text was handed over and no answer came: it may have arrived. What follows is the risk chosen. */
export function unanswered(
  message: OutboxMessage,
  at: number,
  text: string,
  risk: CrashRisk = CRASH_RISK,
  backOff: BackOff = BACK_OFF,
): OutboxMessage {
  need(message, ['sending'], say('left without an answer'))
  const counted = { ...message, unanswered: message.unanswered + 1 }
  if (risk === 'again') return deferred(counted, at, text, backOff)
  return { ...counted, state: 'failed', startedAt: null, failure: { code: 'unknown', text, at } }
}

/** What the outbox does with each message when it starts: those found on their way were cut off. */
export function recover(
  message: OutboxMessage,
  at: number,
  risk: CrashRisk = CRASH_RISK,
  backOff: BackOff = BACK_OFF,
): OutboxMessage {
  if (message.state !== 'sending') return message
  return unanswered(message, at, say('The program stopped before the server answered.'), risk, backOff)
}

/** The desk wants a failed message tried again: its attempts start anew. A bounced one needs another address first. */
export function retry(message: OutboxMessage): OutboxMessage {
  need(message, ['failed'], say('tried again'))
  if (message.failure?.code === 'bounced')
    refuse(
      'address-bounced',
      { address: message.address },
      say('{address} sent it back; correct the address and write a new message.', {
        address: message.address,
      }),
    )
  return { ...message, state: 'approved', attempts: 0, notBeforeAt: null, failure: null }
}

/** It came back after the server had taken it. */
export function bounced(message: OutboxMessage, at: number, text: string): OutboxMessage {
  need(message, ['sent'], say('bounced||message'))
  return { ...message, state: 'failed', failure: { code: 'bounced', text, at } }
}

/**
 * What a restored copy finds still to send may have gone out after the copy was made: it stops as failed, with these
 * words, until the desk decides. What went out, failed or was withdrawn by then stays as it was.
 */
export function heldAfterRestore(message: OutboxMessage, at: number, words: string): OutboxMessage {
  if (!['draft', 'approved', 'sending'].includes(message.state)) return message
  return { ...message, state: 'failed', startedAt: null, failure: { code: 'unknown', text: words, at } }
}
