/** Writing the reminders that are due: one after another, and others come to their turn between two. */
import { say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import { besideDesk, ownPace } from '../desk/beside.ts'
import type { Desk } from '../desk/desk.ts'
import { getVisit } from '../upkeep/plans.ts'
import type { WriteInput } from './inputs.ts'
import { dueForReminder, mostNotWanted, notWantedViews } from './wanted.ts'
import { isUnderWay, writeReminder } from './writeReminder.ts'

/**
 * Writes the drafts that are due this morning; stopped, it ends after the one it is at. Asked again the same day it
 * writes no visit's draft twice.
 */
export async function prepareBatch(desk: Desk, pace = ownPace()) {
  // Nobody is written to on an old due day, however long it takes to know them all.
  const { wanted, notWanted, behind } = await dueForReminder(desk, Number.POSITIVE_INFINITY, pace)
  pace.total = wanted.length
  let written = 0
  let stopped = behind > 0
  const refused: typeof notWanted = []
  for (const { visit, channel } of wanted) {
    stopped ||= !(await pace.turn())
    if (stopped) break
    try {
      await writeReminder(desk, await getVisit(desk, visit), channel)
      written++
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      refused.push({ visit, why: error.message })
    }
    pace.done++
  }
  const lines = [...refused, ...notWanted].slice(0, mostNotWanted)
  return { written, stopped, notWritten: await notWantedViews(desk.store.read, lines) }
}

const writing = besideDesk<Awaited<ReturnType<typeof prepareBatch>>>(() =>
  say('Writing stopped half way: what was written so far stands. Write the rest again.'),
)

/** Begins to write them and answers at once; the batch says how far it has come. */
export function beginBatch(desk: Desk): void {
  writing.begin(desk.store, pace => prepareBatch(desk, pace))
}

/** Waits until the writing under way is done; what came of it, null where it failed. */
export async function batchWritten(desk: Desk) {
  await writing.ends(desk.store)
  return writing.stands(desk.store).result
}

/** Ends the writing after the reminder it is at; what was written stands. */
export function stopBatch(desk: Desk): Promise<void> {
  return writing.stop(desk.store)
}

/** How far the writing is, and what came of the last. */
export function batchStands(desk: Desk) {
  return writing.stands(desk.store)
}

/** Writes one visit's reminder because the desk says so, whatever the morning would do. */
export async function writeOne(desk: Desk, input: WriteInput): Promise<{ id: string }> {
  const visit = await getVisit(desk, input)
  if (visit.booking)
    refuse(
      'booked',
      { ruleOn: input.ruleOn },
      say('This visit is booked as job {jobNumber}.', { jobNumber: visit.booking.jobNumber }),
    )
  if (isUnderWay(visit.reminder))
    refuse(
      'stale',
      { ruleOn: input.ruleOn },
      say('A reminder of this visit is written already; look at the batch.'),
    )
  return writeReminder(desk, visit, input.channel, input.templateId)
}
