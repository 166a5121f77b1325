/** What an owner answered, and what follows from it. */

import { checkDate, dayWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import { afterOutcome, type NextStep, type Outcome, withdraw } from '../../domain/upkeep/index.ts'
import type { Message } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { confirmPlace } from '../booking/booking.ts'
import { act, type Desk } from '../desk/desk.ts'
import { type NewEntry, writeEntries } from '../upkeep/acts.ts'
import { outboxOf, saveOutbox, slotsOf } from '../upkeep/messageRows.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { stopMessages } from '../upkeep/stopMessages.ts'
import { type UpkeepDay, upkeepDay } from '../upkeep/visits.ts'
import type { BookInput, OutcomeInput } from './inputs.ts'
import { handedOver } from './messageActs.ts'
import { type MessageView, messageView } from './messages.ts'

/**
 * Records what came of a message and plans what follows: another try on a day, or the end. Said again, the last word
 * counts. Where the message had not gone out it is withdrawn: the answer came before it.
 */
export function recordOutcome(
  desk: Desk,
  input: OutcomeInput,
): Promise<MessageView & { words: string | null }> {
  if (input.laterOn !== undefined) checkDate(input.laterOn, 'laterOn')
  const { outcome } = input
  return withMessage(desk, input.messageId, async (tx, row, day) => {
    const jobId = outcome === 'booked' ? await bookedJob(tx, row) : null
    return { outcome, laterOn: input.laterOn ?? null, jobId, day }
  })
}

/** The job the owner booked by another way than a proposed time. */
async function bookedJob(tx: Tx, row: Message): Promise<string> {
  const job = await tx.job.findFirst({
    where: { vehicleId: row.vehicleId, status: { in: ['booked', 'inShop'] } },
    orderBy: { dropOffAt: 'asc' },
  })
  if (!job)
    refuse(
      'not-booked',
      { outcome: 'booked' },
      say('Nothing is booked for this car: book one of the proposed times, or another, first.'),
    )
  return job.id
}

/**
 * The owner takes one of the proposed times: it becomes the booking, the other is let go. A time whose hold has run
 * out is still good when nobody took it meanwhile.
 */
export async function bookSlot(desk: Desk, input: BookInput): Promise<MessageView> {
  const tx = desk.store.read
  const row = await tx.message.findUnique({ where: { id: input.messageId } })
  const slot = row && slotsOf(row)[input.slot]
  if (!slot)
    refuse('missing', { slot: input.slot }, say('This message proposes no such time; look at it again.'))
  const job = await tx.job.findUniqueOrThrow({ where: { id: slot.jobId } })
  // Booked already: a click before this one, whose answer was lost.
  if (job.status !== 'booked') await confirmPlace(desk, { jobId: job.id, version: job.version })
  return withMessage(desk, input.messageId, async (_tx, _row, day) => ({
    outcome: 'booked',
    laterOn: null,
    jobId: slot.jobId,
    day,
  }))
}

interface Decided {
  outcome: Outcome
  laterOn: string | null
  jobId: string | null
  day: UpkeepDay
}

function withMessage(
  desk: Desk,
  id: string,
  decide: (tx: Tx, row: Message, day: UpkeepDay) => Promise<Decided>,
): Promise<MessageView> {
  return act(desk, async (tx, audit, at) => {
    const row = await tx.message.findUnique({ where: { id } })
    if (!row) refuse('missing', { messageId: id }, say('This message is not there; look at the batch again.'))
    const { outcome, laterOn, jobId, day } = await decide(tx, row, await upkeepDay(tx, at))
    const rules = await upkeepRules(tx)
    const next = afterOutcome(outcome, row.tryNo, day.today, rules, laterOn)
    await closeMessage(tx, row, at)
    await tx.message.update({
      where: { id },
      data: {
        outcome,
        outcomeAt: at,
        nextTryOn: next.next === 'try' ? next.on : null,
        version: { increment: 1 },
      },
    })
    await releaseSlots(tx, row, at, jobId)
    await writeEntries(
      tx,
      { actId: crypto.randomUUID(), at, who: desk.who },
      entriesOf(row, outcome, jobId, day),
    )
    if (outcome === 'sold') await stopMessages(tx, at, { vehicleId: row.vehicleId }, say('The car was sold.'))
    const words = nextWords(next)
    audit({ act: 'outcome', entity: 'message', entityId: id, detail: { outcome, words } })
    return { ...(await messageView(tx, at, id)), words }
  })
}

/** A call that was made has gone out; anything else the answer came before is withdrawn. */
async function closeMessage(tx: Tx, row: Message, at: number): Promise<void> {
  if (!['draft', 'approved', 'failed', 'sending'].includes(row.state)) return
  if (row.channel === 'call' && row.state === 'approved')
    try {
      return await saveOutbox(tx, row, await handedOver(tx, row, at))
    } catch (error) {
      // Reached at a time the rules would not have rung at: the answer counts all the same, the call does not.
      if (!(error instanceof Refusal)) throw error
    }
  await saveOutbox(tx, row, withdraw(outboxOf(row), say('The answer came before it went out.')))
}

function entriesOf(row: Message, outcome: Outcome, jobId: string | null, day: UpkeepDay): NewEntry[] {
  const { vehicleId, planId, ruleOn } = row
  if (outcome === 'booked') return [{ vehicleId, planId, ruleOn, what: 'booked', jobId }]
  if (outcome === 'sold') return [{ vehicleId, what: 'sold', onDay: day.today }]
  return []
}

function nextWords(next: NextStep): string {
  if (next.next === 'wait-for-visit') return say('Booked: nothing more is written about this visit.')
  if (next.next === 'try') return say('Try {tryNo} on {on}.', { tryNo: next.tryNo, on: dayWords(next.on) })
  if (next.because === 'said-no') return say('No more about this visit; the next one comes in its time.')
  return next.because === 'sold'
    ? say('No more about this car.')
    : say('That was the last try for this visit.')
}
