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
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { noSenderWords, senderOf } from '../desk/mailSettings.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import type { Queue } from './queue.ts'
import { reminderQueue } from './reminderQueue.ts'
import { wordsQueue } from './wordsQueue.ts'

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
  await recoverOrphans(desk, wordsQueue)
  await recoverOrphans(desk, reminderQueue)
  stops.delete(desk.store)
  // Somebody waits for words about their car; a reminder can wait for them.
  const goesOn = await sendQueue(desk, wordsQueue, view, patience)
  if (goesOn) await sendQueue(desk, reminderQueue, view, patience)
  return view
}

type Row = { readonly id: string; readonly state: string }

/** Sends what one table holds, counted in `view`; false where nothing more can go out now. */
async function sendQueue<R extends Row>(
  desk: Desk,
  queue: Queue<R>,
  view: SendRunView,
  patience: number | undefined,
): Promise<boolean> {
  const looked = new Set<string>()
  const unseen = async () =>
    (await queue.approved(desk.store.read, desk.now())).map(({ id }) => id).filter(id => !looked.has(id))
  for (let ids = await unseen(); ids.length > 0; ids = await unseen()) {
    for (const id of ids) {
      if (halted.has(desk.store)) return false
      looked.add(id)
      const sender = await senderOf(desk.store.read, desk.store)
      if (!sender) return stopped(desk, view, say(noSenderWords))
      const begun = await begin(desk, queue, id)
      if (!begun) {
        view.waiting++
        continue
      }
      const outcome = await sendMail(sender.server, await queue.letter(desk, begun, sender), patience)
      const after = await recordAnswer(desk, queue, id, outcome)
      if (after.state === 'sent') view.sent++
      else if (after.state === 'failed') view.failed++
      else view.waiting++
      if (!outcome.sent) {
        view.words.push(outcome.words)
        if (verdictOf(outcome) === 'put-back') return stopped(desk, view, outcome.words)
      }
    }
  }
  return true
}

function stopped(desk: Desk, view: SendRunView, words: string): false {
  stops.set(desk.store, { words, at: desk.now() })
  view.words = [...new Set([...view.words, words])]
  return false
}

/** Mails found on their way though nobody sends: the program stopped before the server answered. */
async function recoverOrphans<R extends Row>(desk: Desk, queue: Queue<R>): Promise<void> {
  const at = desk.now()
  await desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const { crashRisk } = await upkeepRules(tx)
    for (const row of await queue.sending(tx)) {
      const next = recover(queue.outboxOf(row), at, crashRisk)
      const waiting = say('The program stopped before the server answered: it may have arrived already.')
      await queue.save(tx, row, next, { waiting })
      audit({ act: 'found cut off', ...queue.audited(row), detail: { state: next.state } })
    }
  })
}

/** Marks a mail as on its way if the gate lets it; null where it waits or was withdrawn instead. */
function begin<R extends Row>(desk: Desk, queue: Queue<R>, id: string): Promise<R | null> {
  const at = desk.now()
  return desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const row = await queue.row(tx, id)
    if (row.state !== 'approved') return null
    const because = await queue.voidWords(tx, row, at)
    if (because !== null) {
      await queue.save(tx, row, withdraw(queue.outboxOf(row), because))
      await queue.withdrawn(tx, row, at)
      return null
    }
    const { message, decision } = beginSending(await queue.question(tx, row, at))
    await queue.save(tx, row, message, decision.ok ? {} : { waiting: decision.sentence })
    if (!decision.ok) {
      if (message.state === 'withdrawn') await queue.withdrawn(tx, row, at)
      return null
    }
    audit({ act: 'handed to the server', ...queue.audited(row), detail: { attempt: message.attempts } })
    return queue.row(tx, id)
  })
}

function verdictOf(outcome: MailOutcome & { sent: false }) {
  // An address no server would be asked about is this message's own fault, and no later day mends it.
  if (outcome.why === 'letter' && outcome.reply === null) return 'refused'
  return smtpVerdict(outcome.stage, outcome.reply)
}

/** What the server said, or did not, put into the mail's state. */
function recordAnswer<R extends Row>(
  desk: Desk,
  queue: Queue<R>,
  id: string,
  outcome: MailOutcome,
): Promise<OutboxMessage> {
  const at = desk.now()
  return desk.store.transact({ who: 'outbox', at }, async (tx, audit) => {
    const row = await queue.row(tx, id)
    const before = queue.outboxOf(row)
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
    await queue.save(tx, row, next, outcome.sent ? {} : { waiting: outcome.words })
    if (next.state === 'withdrawn') await queue.withdrawn(tx, row, at)
    audit({
      act: outcome.sent ? 'sent' : 'not sent',
      ...queue.audited(row),
      detail: outcome.sent ? { answer: outcome.answer } : { words: outcome.words, state: next.state },
    })
    return next
  })
}
