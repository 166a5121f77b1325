/** Words to a customer about a booking, between their rows and the outbox's rules. */
import type { Channel, Failure, MessageState, OutboxMessage } from '../../domain/upkeep/index.ts'
import { noJson, toJson } from '../../store/json.ts'
import type { JobWords } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'

/**
 * A row as the outbox's rules read it; the job takes the place of the visit. That an attempt was left without an answer
 * stays on the row as the failure `unknown`, after a later one went out too: the words may have arrived twice.
 */
export function outboxOfWords(row: JobWords): OutboxMessage {
  const failure = row.failure as Failure | null
  return {
    id: row.mailId,
    personId: row.customerId,
    carId: row.jobId,
    visitId: row.jobId,
    channel: row.channel as Channel,
    address: row.address,
    tryNo: 1,
    subject: row.subject,
    body: row.body,
    unfilled: [],
    state: row.state as MessageState,
    attempts: row.attempts,
    notBeforeAt: row.notBeforeAt,
    startedAt: row.startedAt,
    sentAt: row.sentAt,
    failure,
    unanswered: failure?.code === 'unknown' ? 1 : 0,
    stopAsked: row.state === 'sending' && row.withdrawnBecause !== null,
    withdrawnBecause: row.withdrawnBecause,
  }
}

/** What the outbox's rules made of the words; `waiting` says why they wait. Refused where another was faster. */
export async function saveWords(
  tx: Tx,
  row: JobWords,
  next: OutboxMessage,
  more: { waiting?: string | null } = {},
): Promise<void> {
  const { state, attempts, notBeforeAt, startedAt, sentAt, unanswered, withdrawnBecause } = next
  const failure = next.failure ?? (unanswered > 0 ? unansweredOf(row, next, more.waiting) : null)
  const { count } = await tx.jobWords.updateMany({
    where: { id: row.id, version: row.version },
    data: {
      ...{ state, attempts, notBeforeAt, startedAt, sentAt, withdrawnBecause },
      failure: failure ? toJson(failure) : noJson,
      waiting: more.waiting ?? null,
      version: { increment: 1 },
    },
  })
  assertFresh(count, 'words', row.id)
}

function unansweredOf(row: JobWords, next: OutboxMessage, text: string | null | undefined): Failure {
  const before = row.failure as Failure | null
  return before?.code === 'unknown'
    ? before
    : { code: 'unknown', text: text ?? '', at: next.notBeforeAt ?? row.startedAt ?? row.createdAt }
}
