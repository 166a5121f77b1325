/** What the reminder, consent, template, results and feed screens are given: plain JSON, see `views.ts`. */

import type {
  Channel,
  ConsentState,
  Failure,
  MergeField,
  MessageState,
  Outcome,
  ResultShare,
} from '../../domain/upkeep/index.ts'
import type { FailedPlanView, MessageSlot } from '../upkeep/views.ts'

export type { Failure, MergeField, MessageState, Outcome, ResultShare }

export interface SlotView extends MessageSlot {
  /** In the owner's language: "Monday, 4 May at 09:00". */
  words: string
  /** held: good; gone: lapsed, released or booked by another; taken: the owner's booking. */
  state: 'held' | 'gone' | 'taken'
}

export interface MessageView {
  id: string
  version: number
  state: MessageState
  channel: Channel
  address: string
  tryNo: number
  customerId: string
  customerName: string
  vehicleId: string
  plate: string
  vehicleWords: string
  planId: string
  ruleOn: string
  /** What is due, as the desk says it. */
  title: string
  dueOn: string
  templateId: string
  templateName: string
  language: string
  subject: string
  body: string
  unfilled: string[]
  slots: SlotView[]
  attempts: number
  notBeforeAt: number | null
  /** Why it waits or did not go out, in words. */
  words: string | null
  sentAt: number | null
  failure: Failure | null
  /** How many copies more may have arrived: attempts that ended without an answer. */
  unanswered: number
  outcome: Outcome | null
  outcomeAt: number | null
  nextTryOn: string | null
  createdAt: number
}

export interface BatchView {
  today: string
  /** Drafts first, then what failed, what waits, what is under way; then what went out today. */
  messages: MessageView[]
  /** Visits a reminder is due for and not written yet: `reminders.prepare` writes them. */
  waiting: number
  /** Visits that are due for a reminder and get none, and why none was written, in words. */
  notWritten: {
    planId: string
    ruleOn: string
    title: string
    plate: string
    customerName: string
    why: string
  }[]
  /** Plans whose visits cannot be worked out, so that nothing is written about them. */
  failed: FailedPlanView[]
  sentToday: number
  dailyLimit: number
  automatic: boolean
  /** Why nothing can go out as things stand (no mail server entered, a wrong password); null: it can. */
  stopped: string | null
  /** Which of the two risks is taken after an interruption. */
  riskWords: string
  /** Messages that may have arrived twice. */
  possiblyTwice: number
  lawNote: string
}

/** What `reminders.prepare` did. */
export interface PreparedView {
  written: number
  notWritten: BatchView['notWritten']
}

export interface SendRunView {
  sent: number
  failed: number
  waiting: number
  words: string[]
}

export interface TemplateView {
  id: string
  name: string
  channel: Channel
  words: Record<string, { subject: string; body: string }>
  /** 0: as the program brings it, not yet saved by the shop. */
  version: number
}

export interface TemplatesView {
  templates: TemplateView[]
  fields: { name: MergeField; meaning: string }[]
  lawNote: string
}

export interface TemplatePreview {
  language: string
  subject: string
  body: string
  unfilled: string[]
  /** Fields filled with an example: the times are found and held when the message is written. */
  examples: MergeField[]
  lawNote: string
}

export interface ConsentLine {
  id: string
  channel: Channel | 'all'
  what: 'given' | 'withdrawn'
  at: number
  address: string | null
  source: string
  wording: string
  who: string
}

export interface ConsentsView {
  customerId: string
  customerName: string
  /** What holds now, for each channel. */
  states: { channel: Channel; address: string | null; state: ConsentState | null; words: string }[]
  /** Newest first. */
  ledger: ConsentLine[]
  reach: { language: string | null; zone: string | null; postal: string; version: number }
}

export interface CallView {
  message: MessageView
  phone: string
  /** The script, its fields filled in. */
  script: string
  /** For a text from the desk's phone. */
  sms: { link: string; qr: string } | null
}

export interface BounceView {
  /** What was read from the report. */
  found: { address: string; status: string; permanent: boolean; messageId: string | null }[]
  words: string
}

export interface ResultsView {
  lines: {
    channel: Channel
    templateId: string
    templateName: string
    reminded: number
    booked: ResultShare
    came: ResultShare
  }[]
  confidence: number
}

export interface FeedView {
  id: string
  name: string
  details: boolean
  createdAt: number
}
