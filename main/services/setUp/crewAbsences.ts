import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { type RowSeen, removeRow, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { newlyTouched, touchedLines } from '../floor/comingJobs.ts'
import { unmannedSteps } from './crewSteps.ts'
import type { AbsenceInput } from './inputs.ts'
import { checkOneSpan } from './oneSpan.ts'

const absences = (tx: Tx) => ({ table: tx.crewAbsence, entity: 'absence' })

/** Notes that somebody is away for a time, as an act of its own. */
export function saveAbsence(desk: Desk, input: AbsenceInput): Promise<{ id: string }> {
  return act(desk, (tx, audit, at) => writeAbsence(tx, audit, at, input))
}

/**
 * Notes that somebody is away for a time. Refused where it ends before it begins or overlaps another absence; the booked
 * steps it leaves without them are named until it is `accepted` (nobody plans an illness).
 */
export async function writeAbsence(
  tx: Tx,
  audit: Audit,
  at: number,
  input: AbsenceInput,
): Promise<{ id: string }> {
  const { crewId, fromAt, toAt } = input
  const data = { crewId, fromAt, toAt, reason: checkNote(input.reason, 'reason', 120) }
  const member = found(
    await tx.crewMember.findFirst({ where: { id: crewId, archivedAt: null } }),
    { crewId },
    say('This person is not of the crew any more; choose another.'),
  )
  const others = await tx.crewAbsence.findMany({ where: { crewId, NOT: { id: input.id ?? '' } } })
  checkOneSpan(others, data, (await shopOf(tx)).zone)
  const before = await unmannedSteps(tx, crewId, at)
  const { id } = await saveRow(audit, absences(tx), input, { data })
  const touched = newlyTouched(before, await unmannedSteps(tx, crewId, at))
  askFirst('touches-bookings', touchedLines(touched), {
    field: 'fromAt',
    lead: say('{name} is booked for these steps:', { name: member.name }),
    accepted: input.accepted,
  })
  return { id }
}

/** Takes an absence out; the audit line keeps what stood there. */
export function removeAbsence(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, (tx, audit) => removeRow(audit, absences(tx), input))
}
