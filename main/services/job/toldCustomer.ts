/** What a customer is told of their booking, drafted from the facts in their language, and what they were told. */
import { datedWords } from '../../domain/calendar/index.ts'
import { isCalledOff, type SaidTimes, type ToldKind, timesSaid } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Failure, MessageState } from '../../domain/upkeep/index.ts'
import type { JobWords } from '../../store/rows.ts'
import { act, type Desk } from '../desk/desk.ts'
import { languageTo, speakingToOwner } from '../desk/speaking.ts'
import { type JobRow, plateWords, vehicleWords } from '../floor/jobRows.ts'
import type { TellInput } from './inputs.ts'
import { type JobOnFloor, jobOnFloor } from './jobOnFloor.ts'

interface DraftView {
  readonly kind: ToldKind
  readonly subject: string
  readonly text: string
  /** The times it names, to be sent with it. */
  readonly says: SaidTimes
}

/** The drafts that fit how the job stands, and what its customer was told, the last first. */
export async function toldCustomer(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const found = await jobOnFloor(tx, desk.now(), id)
  const { job, floor } = found
  const drafts = await speakingToOwner(tx, id, async () => kindsOf(job).map(kind => draftOf(found, kind)))
  const said = await tx.jobWords.findMany({
    where: { jobId: id },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  return {
    to: job.customer.email,
    phone: job.customer.phone,
    drafts,
    said: said.map(row => ({
      id: row.id,
      version: row.version,
      kind: row.kind as ToldKind,
      channel: row.channel as TellInput['channel'],
      text: row.body,
      when: datedWords(row.createdAt, floor.zone, floor.nowAt),
      who: row.approvedBy,
      state: row.state as MessageState,
      outcome: outcomeOf(row, at => datedWords(at, floor.zone, floor.nowAt)),
      /** Whether it may be tried again as it is: what came back first needs another address. */
      again: row.state === 'failed' && (row.failure as Failure | null)?.code !== 'bounced',
    })),
  }
}

/** Writes down what the customer was told, word by word, and how. */
export function tellCustomer(desk: Desk, { id, kind, channel, ...input }: TellInput): Promise<void> {
  const text = checkNote(input.text, 'text', 4_000)
  if (text === '') refuse('text-missing', { text }, say('Write what was said.'))
  return act(desk, async (tx, audit, at) => {
    const { job } = await jobOnFloor(tx, at, id)
    if (!maySay(job, kind))
      refuse('not-now', { kind }, say('That no longer applies to this job; look at it again.'))
    const mailId = `${crypto.randomUUID()}@lustrum.example`
    const address = (channel === 'call' ? job.customer.phone : job.customer.email) ?? ''
    const language = await languageTo(tx, job.customerId)
    await tx.jobWords.create({
      data: {
        mailId,
        jobId: id,
        customerId: job.customerId,
        kind,
        channel,
        address,
        language,
        subject: '',
        body: text,
        // By hand: what the outbox sends is written by `sendWords` of the reminders.
        state: 'sent',
        sentAt: at,
        createdAt: at,
        approvedBy: desk.who,
      },
    })
    audit({ act: 'told', entity: 'job', entityId: id, detail: { kind, channel } })
  })
}

/** What became of words handed to the outbox; null: they were said or written by hand. */
function outcomeOf(row: JobWords, when: (at: number) => string): string | null {
  const failure = row.failure as Failure | null
  switch (row.state as MessageState) {
    case 'sent':
      if (row.attempts === 0) return null
      return failure
        ? say('sent {when}, perhaps twice: an earlier attempt had no answer', { when: when(row.sentAt ?? 0) })
        : say('sent {when}', { when: when(row.sentAt ?? 0) })
    case 'sending':
      return say('with the mail server now')
    case 'failed':
      return say('not sent: {why}', { why: failure?.text ?? '' })
    case 'withdrawn':
      return say('not sent: {why}', { why: row.withdrawnBecause ?? '' })
    default:
      return row.waiting === null
        ? say('goes out in a moment')
        : row.notBeforeAt === null
          ? say('waits: {why}', { why: row.waiting })
          : say('waits until {when}: {why}', { why: row.waiting, when: when(row.notBeforeAt) })
  }
}

/** Whether these words are still so of the job. */
export function maySay(job: JobRow, kind: string): boolean {
  return kindsOf(job).some(each => each === kind)
}

/** What may be said as the job stands. */
function kindsOf(job: JobRow): ToldKind[] {
  if (isCalledOff(job) || job.status === 'held' || job.status === 'handedOver') return []
  if (job.status === 'booked') return ['confirmation', 'dayBefore', 'promiseMoved']
  const done = job.steps.every(step => step.kind === 'hold' || step.actualEndAt !== null)
  return done ? ['ready'] : ['promiseMoved']
}

function draftOf({ job, floor }: JobOnFloor, kind: ToldKind): DraftView {
  const when = (at: number) => datedWords(at, floor.zone, floor.nowAt)
  const plate = job.vehicle.plate === '' ? '' : ` (${plateWords(job.vehicle.plate)})`
  const says = timesSaid(kind, job, floor.nowAt)
  const facts = {
    car: `${vehicleWords(job.vehicle)}${plate}`,
    dropOffAt: when(job.dropOffAt),
    promisedAt: when(job.promisedAt),
    readyAt: when(says.readyAt ?? job.handoverAt),
  }
  const [subject, text] = wordsOf(kind, facts)
  const dear = say('Dear {name},', { name: job.customer.name })
  return { kind, subject, text: [dear, '', text, '', floor.shop.name].join('\n'), says }
}

type Facts = Record<'car' | 'dropOffAt' | 'promisedAt' | 'readyAt', string>

function wordsOf(kind: ToldKind, facts: Facts): [subject: string, text: string] {
  switch (kind) {
    case 'confirmation':
      return [
        say('Your booking: {dropOffAt}', facts),
        say('your {car} is booked: please bring it {dropOffAt}. We promise it for {promisedAt}.', facts),
      ]
    case 'dayBefore':
      return [
        say('Your car comes to us {dropOffAt}', facts),
        say(
          'we expect your {car} {dropOffAt} and promise it for {promisedAt}. Please tell us if something comes up.',
          facts,
        ),
      ]
    case 'ready':
      return [
        say('Your car is ready', facts),
        say('your {car} is ready and can be fetched from {readyAt}.', facts),
      ]
    case 'promiseMoved':
      return [
        say('Your car: now promised for {promisedAt}', facts),
        say(
          'the time of your {car} has moved: we promise it for {promisedAt} now. Please tell us whether that suits you, or call us and we find another.',
          facts,
        ),
      ]
  }
}
