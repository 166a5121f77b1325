/** Messages between their rows and the outbox's rules. */
import type { Channel, Failure, MessageState, OutboxMessage } from '../../domain/upkeep/index.ts'
import { noJson, toJson } from '../../store/json.ts'
import type { Message } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'

/** A proposed time, held as a job until `heldUntilAt`. */
export interface MessageSlot {
  jobId: string
  dropOffAt: number
  handoverAt: number
  heldUntilAt: number
}

/** A row as the outbox's rules read it. */
export function outboxOf(row: Message): OutboxMessage {
  return {
    id: row.mailId,
    personId: row.customerId,
    carId: row.vehicleId,
    visitId: `${row.planId} ${row.ruleOn}`,
    channel: row.channel as Channel,
    address: row.address,
    tryNo: row.tryNo,
    subject: row.subject,
    body: row.body,
    unfilled: row.unfilled as string[],
    state: row.state as MessageState,
    attempts: row.attempts,
    notBeforeAt: row.notBeforeAt,
    startedAt: row.startedAt,
    sentAt: row.sentAt,
    failure: row.failure as Failure | null,
    unanswered: row.unanswered,
    stopAsked: row.stopAsked,
    withdrawnBecause: row.withdrawnBecause,
  }
}

/** The times a message proposes. */
export function slotsOf(row: { readonly slots: unknown }): MessageSlot[] {
  return row.slots as MessageSlot[]
}

/** What the outbox's rules made of a message; `waiting` says why it waits. Refused where another was faster. */
export async function saveOutbox(
  tx: Tx,
  row: Message,
  next: OutboxMessage,
  more: { waiting?: string | null; approvedBy?: string; language?: string } = {},
): Promise<void> {
  const { subject, body, state, attempts, notBeforeAt, startedAt, sentAt, unanswered } = next
  const { count } = await tx.message.updateMany({
    where: { id: row.id, version: row.version },
    data: {
      subject,
      body,
      state,
      attempts,
      notBeforeAt,
      startedAt,
      sentAt,
      unanswered,
      unfilled: [...next.unfilled],
      failure: next.failure ? toJson(next.failure) : noJson,
      stopAsked: next.stopAsked,
      withdrawnBecause: next.withdrawnBecause,
      waiting: null,
      ...more,
      version: { increment: 1 },
    },
  })
  assertFresh(count, 'message', row.id)
}
