/** Words to a customer about a booking, handed to the outbox. */
import { hasMovedSince } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { maySend, retry } from '../../domain/upkeep/index.ts'
import type { JobWords } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowSeen } from '../desk/keep.ts'
import { noSenderWords, senderOf } from '../desk/mailSettings.ts'
import { languageTo } from '../desk/speaking.ts'
import type { SendWordsInput } from '../job/inputs.ts'
import { jobOnFloor } from '../job/jobOnFloor.ts'
import { maySay } from '../job/toldCustomer.ts'
import { saveWords } from '../upkeep/wordsRows.ts'
import { wordsQuestion, wordsQueue } from './wordsQueue.ts'

/**
 * Lets words go out by e-mail, once the outbox comes to them. @throws Refusal with the gate's own sentence where no
 * later moment would let them, so that the desk can say them by phone instead.
 */
export function sendWords(desk: Desk, { id, kind, says, ...input }: SendWordsInput): Promise<{ id: string }> {
  const text = checkNote(input.text, 'text', 4_000)
  if (text === '') refuse('text-missing', { text }, say('Write what is to be said.'))
  const subject = input.subject.replaceAll(/\s+/g, ' ').trim()
  if (subject === '') refuse('subject-empty', { subject }, say('An e-mail needs a subject.'))
  return act(desk, async (tx, audit, at) => {
    const { job } = await jobOnFloor(tx, at, id)
    if (!maySay(job, kind))
      refuse('not-now', { kind }, say('That no longer applies to this job; look at it again.'))
    if (hasMovedSince(says, job))
      refuse(
        'facts-moved',
        { id },
        say('The times have moved since this was drafted: read it once more, then send it.'),
      )
    const address = found(job.customer.email, { id }, say('There is no e-mail address on file.'))
    const sender = found(await senderOf(tx, desk.store), { id }, say(noSenderWords))
    const row = await tx.jobWords.create({
      data: {
        mailId: `<words.${crypto.randomUUID()}@${sender.from.address.split('@')[1]}>`,
        jobId: id,
        customerId: job.customerId,
        kind,
        channel: 'email',
        address,
        language: await languageTo(tx, job.customerId),
        subject,
        body: text,
        saysDropOffAt: says.dropOffAt,
        saysPromisedAt: says.promisedAt,
        saysReadyAt: says.readyAt,
        state: 'approved',
        createdAt: at,
        approvedBy: desk.who,
      },
    })
    await assertMaySend(tx, row, at)
    audit({ act: 'told', entity: 'job', entityId: id, detail: { kind, channel: 'outbox' } })
    return { id: row.id }
  })
}

/** Tries words that failed again, under the id they had, so that a copy can be told. */
export function sendWordsAgain(desk: Desk, { id, version }: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const row = await tx.jobWords.findUnique({ where: { id } })
    if (row?.version !== version) return assertFresh(0, 'words', id)
    const still = await wordsQueue.voidWords(tx, row, at)
    if (still !== null) refuse('not-now', { id }, still)
    const next = retry(wordsQueue.outboxOf(row))
    await saveWords(tx, row, next)
    await assertMaySend(tx, await wordsQueue.row(tx, id), at)
    audit({
      act: 'told',
      entity: 'job',
      entityId: row.jobId,
      detail: { kind: row.kind, channel: 'outbox' },
    })
  })
}

/** A wait is shown on the job; what never ends is refused at once. */
async function assertMaySend(tx: Tx, row: JobWords, at: number): Promise<void> {
  const decision = maySend(await wordsQuestion(tx, row, at))
  if (decision.ok) return
  if (decision.againAt === null) refuse(decision.code, { to: row.address }, decision.sentence)
  await tx.jobWords.updateMany({
    where: { id: row.id },
    data: { waiting: decision.sentence, notBeforeAt: decision.againAt },
  })
}
