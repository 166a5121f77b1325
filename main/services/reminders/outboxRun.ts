/**
 * The outbox: hands approved e-mails to the server, one after another. A message is marked as on its way before the
 * server hears of it, and as sent after its OK, each in a transaction of its own; what is found on its way when a run
 * begins was cut off, and the risk the shop chose decides (`CRASH_RISK_WORDS`).
 */
import { say } from '../../domain/language/index.ts'
import {
  accepted,
  beginSending,
  deferred,
  type OutboxMessage,
  putBack,
  recover,
  refused,
  smtpVerdict,
  unanswered,
  withdraw,
} from '../../domain/upkeep/index.ts'
import { type MailOutcome, sendMail } from '../../outbox/mail.ts'
import type { Message } from '../../store/rows.ts'
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { noSenderWords, senderOf } from '../desk/mailSettings.ts'
import { outboxOf, saveOutbox } from '../upkeep/messageRows.ts'
import { addressKey, reachOf } from '../upkeep/reach.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { sendQuestion } from './gate.ts'
import { letterOf } from './letterOf.ts'

export interface SendRunView {
  sent: number
  failed: number
  waiting: number
  words: string[]
}

/** One run at a time for each database, and why the last one stopped, if it did. */
const running = new WeakMap<Store, Promise<SendRunView>>()
const stops = new WeakMap<Store, { words: string; at: number }>()

/** Databases that are about to be closed: a run ends after the message it is at. */
const halted = new WeakSet<Store>()

/** Ends the run under way after its present message, and begins no other; resolves when it has ended. */
export async function haltOutbox(store: Store): Promise<void> {
  halted.add(store)
  await running.get(store)
}

/** Minutes after which a run tries again by itself where the settings were at fault. */
const pauseMin = 15

/** Why the last run stopped with mail still to send; null: it did not. */
export function stoppedWords(store: Store): string | null {
  return stops.get(store)?.words ?? null
}

export interface RunOptions {
  /** The host's timer asks, not a person: settings that were just found wrong are left alone for a while. */
  byItself?: boolean
  /** Milliseconds to wait for a server's sign of life. */
  patience?: number
}

/** Sends what may go out now. A run that is under way is joined, not doubled. */
export function runOutbox(desk: Desk, { byItself = false, patience }: RunOptions = {}): Promise<SendRunView> {
  const { store } = desk
  const under = running.get(store)
  if (under) return under
  const stop = stops.get(store)
  if (byItself && stop && desk.now() < stop.at + pauseMin)
    return Promise.resolve({ sent: 0, failed: 0, waiting: 0, words: [stop.words] })
  const run = sendAll(desk, patience).finally(() => running.delete(store))
  running.set(store, run)
  return run
}

async function sendAll(desk: Desk, patience: number | undefined): Promise<SendRunView> {
  const view: SendRunView = { sent: 0, failed: 0, waiting: 0, words: [] }
  await recoverOrphans(desk)
  stops.delete(desk.store)
  const looked = new Set<string>()
  for (let ids = await approvedIds(desk, looked); ids.length > 0; ids = await approvedIds(desk, looked)) {
    for (const id of ids) {
      if (halted.has(desk.store)) return view
      looked.add(id)
      const sender = await senderOf(desk.store.read, desk.store)
      if (!sender) return stopped(desk, view, say(noSenderWords))
      const begun = await begin(desk, id)
      if (!begun) {
        view.waiting++
        continue
      }
      const outcome = await sendMail(sender.server, await letterOf(desk, begun, sender), patience)
      const after = await recordAnswer(desk, begun.id, outcome)
      if (after.state === 'sent') view.sent++
      else if (after.state === 'failed') view.failed++
      else view.waiting++
      if (!outcome.sent) {
        view.words.push(outcome.words)
        if (verdictOf(outcome) === 'put-back') return stopped(desk, view, outcome.words)
      }
    }
  }
  return view
}

function stopped(desk: Desk, view: SendRunView, words: string): SendRunView {
  stops.set(desk.store, { words, at: desk.now() })
  return { ...view, words: [...new Set([...view.words, words])] }
}

/** Messages found on their way though nobody sends: the program stopped before the server answered. */
async function recoverOrphans(desk: Desk): Promise<void> {
  const at = desk.now()
  await desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const { crashRisk } = await upkeepRules(tx)
    for (const row of await tx.message.findMany({ where: { state: 'sending' } })) {
      const next = recover(outboxOf(row), at, crashRisk)
      const waiting = say('The program stopped before the server answered: it may have arrived already.')
      await saveOutbox(tx, row, next, { waiting })
      audit({ act: 'found cut off', entity: 'message', entityId: row.id, detail: { state: next.state } })
    }
  })
}

/** The e-mails that may go out by now and that this run has not looked at, the oldest first. */
async function approvedIds(desk: Desk, looked: ReadonlySet<string>): Promise<string[]> {
  const rows = await desk.store.read.message.findMany({
    where: {
      state: 'approved',
      channel: 'email',
      OR: [{ notBeforeAt: null }, { notBeforeAt: { lte: desk.now() } }],
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: { id: true },
  })
  return rows.map(row => row.id).filter(id => !looked.has(id))
}

/** Marks a message as on its way if the gate lets it; null where it waits or was withdrawn instead. */
function begin(desk: Desk, id: string): Promise<Message | null> {
  const at = desk.now()
  return desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const row = await tx.message.findUniqueOrThrow({ where: { id } })
    if (row.state !== 'approved') return null
    const onFile = (await reachOf(tx, [row.customerId])).get(row.customerId)?.address.email ?? ''
    if (addressKey(onFile) !== addressKey(row.address)) {
      await saveOutbox(tx, row, withdraw(outboxOf(row), say('The address on file is another one by now.')))
      await releaseSlots(tx, row, at)
      return null
    }
    const { message, decision } = beginSending(await sendQuestion(tx, row, at))
    await saveOutbox(tx, row, message, decision.ok ? {} : { waiting: decision.sentence })
    if (!decision.ok) {
      if (message.state === 'withdrawn') await releaseSlots(tx, row, at)
      return null
    }
    audit({
      act: 'handed to the server',
      entity: 'message',
      entityId: id,
      detail: { attempt: message.attempts },
    })
    return tx.message.findUniqueOrThrow({ where: { id } })
  })
}

function verdictOf(outcome: MailOutcome & { sent: false }) {
  // An address no server would be asked about is this message's own fault, and no later day mends it.
  if (outcome.why === 'letter' && outcome.reply === null) return 'refused'
  return smtpVerdict(outcome.stage, outcome.reply)
}

/** What the server said, or did not, put into the message's state. */
function recordAnswer(desk: Desk, id: string, outcome: MailOutcome): Promise<OutboxMessage> {
  const at = desk.now()
  return desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const row = await tx.message.findUniqueOrThrow({ where: { id } })
    const before = outboxOf(row)
    const { crashRisk } = await upkeepRules(tx)
    const next = ((): OutboxMessage => {
      if (outcome.sent) return accepted(before, at)
      switch (verdictOf(outcome)) {
        case 'refused':
          return refused(before, at, outcome.words)
        case 'unanswered':
          return unanswered(before, at, outcome.words, crashRisk)
        case 'put-back':
          return putBack(before)
        default:
          return deferred(before, at, outcome.words)
      }
    })()
    await saveOutbox(tx, row, next, outcome.sent ? {} : { waiting: outcome.words })
    if (next.state === 'withdrawn') await releaseSlots(tx, row, at)
    audit({
      act: outcome.sent ? 'sent' : 'not sent',
      entity: 'message',
      entityId: id,
      detail: outcome.sent ? { answer: outcome.answer } : { words: outcome.words, state: next.state },
    })
    return next
  })
}
