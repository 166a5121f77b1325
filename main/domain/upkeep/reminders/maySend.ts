import { addDays, dateOf, startOfDay } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { type Channel, type ConsentEntry, consentState, sameAddress } from './consent.ts'
import { headerProblem } from './headerText.ts'
import type { OutboxMessage } from './message.ts'
import { nextSendAt, type SendHours } from './sendHours.ts'

/** The shop's rules of politeness. */
export interface SendRules {
  readonly hours: SendHours
  /** Messages a day over all channels but letters, by the shop's date. */
  readonly dailyLimit: number
  /** How many reminders one visit gets. */
  readonly maxTries: number
  /** Days between two messages to one person, whatever they are about. */
  readonly gapDays: number
}

/** A message that went out, or may have. */
export interface PastSend {
  readonly messageId: string
  readonly personId: string
  readonly visitId: string
  readonly channel: Channel
  /** Epoch minute. */
  readonly at: number
}

/** Everything the decision is made from. */
export interface SendQuestion {
  readonly message: OutboxMessage
  readonly consents: readonly ConsentEntry[]
  /** Epoch minute the car was sold, if it was. */
  readonly soldAt: number | null
  /** Whether the visit still waits to be booked. */
  readonly visitOpen: boolean
  readonly sends: readonly PastSend[]
  /** Addresses that sent a message back. */
  readonly bounced: readonly string[]
  readonly rules: SendRules
  readonly ownerZone: string
  readonly shopZone: string
  readonly nowAt: number
}

export type NoSendCode =
  | 'not-approved'
  | 'stopped'
  | 'sent-already'
  | 'car-sold'
  | 'no-consent'
  | 'withdrawn'
  | 'address-withdrawn'
  | 'address-bounced'
  | 'visit-settled'
  | 'tries-used'
  | 'unfilled'
  | 'header-unsafe'
  | 'not-yet'
  | 'too-soon'
  | 'daily-limit'
  | 'quiet'

export type SendDecision =
  | { readonly ok: true }
  | {
      readonly ok: false
      readonly code: NoSendCode
      readonly sentence: string
      /** The earliest minute worth asking again; null: never, as things stand. */
      readonly againAt: number | null
    }

/**
 * Whether a message may go out now: the one gate every path goes through. First the reasons that are final (not
 * approved, sold, no consent, ...), then those that pass with time, so that a message never waits for a morning on
 * which it may not be sent either. Letters wake nobody: quiet hours, closed days and the daily limit, which all are
 * about what rings at once, do not hold them; everything else does.
 */
export function maySend(question: SendQuestion): SendDecision {
  const final = finalReason(question)
  if (final) return { ok: false, ...final, againAt: null }
  const { message, rules, ownerZone, nowAt } = question
  const letter = message.channel === 'letter'
  const wait = waitReason(question, letter)
  if (wait) {
    const againAt = letter ? wait.untilAt : nextSendAt(wait.untilAt, rules.hours, ownerZone)
    return { ok: false, code: wait.code, sentence: wait.sentence, againAt }
  }
  if (letter) return { ok: true }
  const sendAt = nextSendAt(nowAt, rules.hours, ownerZone)
  if (sendAt === nowAt) return { ok: true }
  return {
    ok: false,
    code: 'quiet',
    sentence: say("These are quiet hours, or a closed day, by the owner's clock."),
    againAt: sendAt,
  }
}

function finalReason(question: SendQuestion): { code: NoSendCode; sentence: string } | null {
  const { message, soldAt, nowAt, rules } = question
  if (message.state !== 'approved') return { code: 'not-approved', sentence: say('Nobody has approved it.') }
  if (message.stopAsked)
    return { code: 'stopped', sentence: say('It was withdrawn while it was on its way.') }
  if (message.sentAt !== null)
    return { code: 'sent-already', sentence: say('The server has taken it already.') }
  if (soldAt !== null && soldAt <= nowAt) return { code: 'car-sold', sentence: say('The car was sold.') }
  const consent = consentState(question.consents, message.personId, message.channel, message.address, nowAt)
  if (!consent.given) {
    if (consent.because === 'never')
      return { code: 'no-consent', sentence: say('The owner has not agreed to be reached this way.') }
    if (consent.because === 'withdrawn')
      return { code: 'withdrawn', sentence: say('The owner has withdrawn the consent for it.') }
    return {
      code: 'address-withdrawn',
      sentence: say('Somebody at this address has asked for no more messages.'),
    }
  }
  if (question.bounced.some(address => sameAddress(address, message.address)))
    return { code: 'address-bounced', sentence: say('This address sent an earlier message back.') }
  if (!question.visitOpen)
    return { code: 'visit-settled', sentence: say('The visit is booked, done or given up already.') }
  if (message.tryNo > rules.maxTries)
    return {
      code: 'tries-used',
      sentence: say('{maxTries} reminders are the most for one visit.', { maxTries: rules.maxTries }),
    }
  if (message.unfilled.length > 0)
    return {
      code: 'unfilled',
      sentence: say('Nothing is known for: {unfilled}.', { unfilled: message.unfilled.join(', ') }),
    }
  for (const text of [message.subject, message.address, message.id]) {
    const problem = headerProblem(text)
    if (problem) return { code: 'header-unsafe', sentence: problem }
  }
  return null
}

function waitReason(
  { message, sends, rules, shopZone, ownerZone, nowAt }: SendQuestion,
  letter: boolean,
): { code: NoSendCode; sentence: string; untilAt: number } | null {
  if (message.notBeforeAt !== null && nowAt < message.notBeforeAt)
    return { code: 'not-yet', sentence: say('It waits for its next attempt.'), untilAt: message.notBeforeAt }
  // One dated after now counts too: a clock put back must not open the gate.
  const others = sends.filter(send => send.messageId !== message.id)
  let lastAt = Number.NEGATIVE_INFINITY
  for (const send of others) if (send.personId === message.personId) lastAt = Math.max(lastAt, send.at)
  if (lastAt > Number.NEGATIVE_INFINITY) {
    const untilAt = addDays(lastAt, rules.gapDays, ownerZone)
    if (nowAt < untilAt)
      return {
        code: 'too-soon',
        sentence: say('The owner was written to less than {gapDays} days ago.', { gapDays: rules.gapDays }),
        untilAt,
      }
  }
  if (letter) return null
  const today = dateOf(nowAt, shopZone)
  const sentToday = others.filter(
    send => send.channel !== 'letter' && dateOf(send.at, shopZone) === today,
  ).length
  if (sentToday >= rules.dailyLimit) {
    const tomorrow = Temporal.PlainDate.from(today).add({ days: 1 }).toString()
    return {
      code: 'daily-limit',
      sentence: say('{dailyLimit} messages have gone out today, the most for a day.', {
        dailyLimit: rules.dailyLimit,
      }),
      untilAt: startOfDay(tomorrow, shopZone),
    }
  }
  return null
}
