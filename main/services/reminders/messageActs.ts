/** What the desk does with a message before and after it goes out. */

import { setImmediate as nextTurn } from 'node:timers/promises'
import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import {
  accepted,
  approve,
  beginSending,
  checkWords,
  fill,
  type OutboxMessage,
  retry,
  revise,
  withdraw,
} from '../../domain/upkeep/index.ts'
import { sendMail } from '../../outbox/mail.ts'
import type { Message } from '../../store/rows.ts'
import { type AuditEntry, assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowSeen } from '../desk/keep.ts'
import { noSenderWords, senderOf } from '../desk/mailSettings.ts'
import { planOfVisit } from '../upkeep/acts.ts'
import { outboxOf, saveOutbox, slotsOf } from '../upkeep/messageRows.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { sendQuestion } from './gate.ts'
import type { ApproveInput, RefuseInput, WordsInput } from './inputs.ts'
import { letterOf } from './letterOf.ts'
import { mergeFor } from './mergeFor.ts'
import { type MessageView, messageView } from './messages.ts'

/** The message an act is about, as this desk last saw it. */
export async function freshMessage(tx: Tx, { id, version }: RowSeen): Promise<Message> {
  const row = await tx.message.findUnique({ where: { id } })
  if (!row) refuse('missing', { id }, say('This message is not there; look at the batch again.'))
  if (row.version !== version) assertFresh(0, 'message', id)
  return row
}

function change(
  desk: Desk,
  key: RowSeen,
  done: string,
  decide: (tx: Tx, row: Message, audit: (entry: AuditEntry) => void) => Promise<OutboxMessage>,
): Promise<MessageView> {
  return act(desk, async (tx, audit, at) => {
    const row = await freshMessage(tx, key)
    const next = await decide(tx, row, audit)
    await saveOutbox(tx, row, next, next.state === 'approved' ? { approvedBy: desk.who } : {})
    if (next.state === 'withdrawn') await releaseSlots(tx, row, at)
    audit({ act: done, entity: 'message', entityId: row.id, detail: { state: next.state } })
    return messageView(tx, at, row.id)
  })
}

/** Lets a draft go out when the rules allow. */
export function approveMessage(desk: Desk, key: RowSeen): Promise<MessageView> {
  return change(desk, key, 'approved', async (_, row) => approve(outboxOf(row)))
}

/** Approves all drafts that can be, or those named; says which could not. */
export async function approveAll(
  desk: Desk,
  input: ApproveInput = {},
): Promise<{ approved: number; words: string[] }> {
  const rows = await desk.store.read.message.findMany({
    where: { state: 'draft', ...(input.ids && { id: { in: input.ids } }) },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: { id: true, version: true, subject: true },
  })
  const words: string[] = []
  let approved = 0
  for (const row of rows) {
    await nextTurn()
    try {
      await approveMessage(desk, row)
      approved++
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      words.push(`${row.subject}: ${error.message}`)
    }
  }
  return { approved, words }
}

/** New words for a message, which is a draft again; fields in them are filled. */
export function editMessage(desk: Desk, input: WordsInput): Promise<MessageView> {
  const words = { subject: input.subject.trim(), body: input.body }
  checkWords(words, 'words')
  return change(desk, input, 'edited', async (tx, row) => {
    if (row.channel === 'email' && words.subject === '')
      refuse('subject-empty', { subject: input.subject }, say('An e-mail needs a subject.'))
    const vehicle = await tx.vehicle.findUniqueOrThrow({
      where: { id: row.vehicleId },
      include: { customer: true },
    })
    const { plan } = await planOfVisit(tx, row.planId)
    const values = await mergeFor(tx, await upkeepRules(tx), {
      vehicle,
      kind: plan.kind,
      title: plan.title,
      dueOn: row.ruleOn,
      slots: slotsOf(row),
      language: row.language,
    })
    const filled = fill(words, values)
    // A blank left standing from before is still a field nobody has filled.
    const blank = filled.unfilled.length === 0 && /_{4}/.test(filled.subject + filled.body)
    return revise(outboxOf(row), {
      ...filled,
      unfilled: blank ? (row.unfilled as string[]) : filled.unfilled,
    })
  })
}

/** It shall not go out, and this visit is not written about again by itself. */
export function refuseMessage(desk: Desk, input: RefuseInput): Promise<MessageView> {
  const why = input.why?.trim() || say('Refused at the desk.')
  return change(desk, input, 'refused', async (_, row) => withdraw(outboxOf(row), why))
}

/** Tries a failed message again, its attempts counted anew. */
export function retryMessage(desk: Desk, key: RowSeen): Promise<MessageView> {
  return change(desk, key, say('tried again'), async (_, row) => retry(outboxOf(row)))
}

/** A letter that was posted, or a text sent from the desk's phone: through the same gate as a mail. */
export function sentByHand(desk: Desk, key: RowSeen): Promise<MessageView> {
  const at = desk.now()
  return change(desk, key, say('sent by hand'), async (tx, row) => {
    if (row.channel === 'email')
      refuse('channel-bad', { id: key.id }, say('An e-mail goes out by the outbox, not by hand.'))
    return handedOver(tx, row, at)
  })
}

/** A message that goes out by hand right now. @throws Refusal with the gate's own sentence where it may not. */
export async function handedOver(tx: Tx, row: Message, at: number): Promise<OutboxMessage> {
  const { message, decision } = beginSending(await sendQuestion(tx, row, at))
  if (!decision.ok) refuse(decision.code, { id: row.id }, decision.sentence)
  return accepted(message, at)
}

/** Sends a message, as it would arrive, to the shop's own address; nothing about it changes. */
export async function sendTest(desk: Desk, input: { id: string }): Promise<{ sent: boolean; words: string }> {
  const tx = desk.store.read
  const sender = await senderOf(tx, desk.store)
  if (!sender) refuse('mail-not-set-up', { host: null }, say(noSenderWords))
  const row = await tx.message.findUnique({ where: { id: input.id } })
  if (!row) refuse('missing', { id: input.id }, say('This message is not there; look at the batch again.'))
  const to = sender.from.address
  const letter = await letterOf(
    desk,
    { ...row, address: to, subject: say('Test: {subject}', { subject: row.subject }) },
    sender,
  )
  const outcome = await sendMail(sender.server, {
    ...letter,
    // A test is not the reminder: it must not be taken for its copy.
    messageId: `test.${crypto.randomUUID()}@${to.split('@')[1]}`,
  })
  return outcome.sent
    ? { sent: true, words: say('Sent to {to}.', { to }) }
    : { sent: false, words: outcome.words }
}
