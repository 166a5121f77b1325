import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { type RowSeen, removeRow, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { stayLines } from './bays.ts'
import type { ClosureInput } from './inputs.ts'
import { checkOneSpan } from './oneSpan.ts'

const closures = (tx: Tx) => ({ table: tx.bayClosure, entity: 'closure' })

/** Closes a bay for a time, as an act of its own. */
export function saveClosure(desk: Desk, input: ClosureInput): Promise<{ id: string }> {
  return act(desk, (tx, audit, at) => writeClosure(tx, audit, at, input))
}

/**
 * Closes a bay for a time. Refused where it ends before it begins or overlaps another closure of the bay; the booked stays
 * it lies over are named until it is `accepted` (a lamp fails when it fails), and are then told with a way out.
 */
export async function writeClosure(
  tx: Tx,
  audit: Audit,
  at: number,
  input: ClosureInput,
): Promise<{ id: string }> {
  const { bayId, fromAt, toAt } = input
  const data = { bayId, fromAt, toAt, reason: checkNote(input.reason, 'reason', 120) }
  const bay = found(
    await tx.bay.findFirst({ where: { id: bayId, archivedAt: null } }),
    { bayId },
    say('This bay is not in use any more; choose another.'),
  )
  const others = await tx.bayClosure.findMany({ where: { bayId, NOT: { id: input.id ?? '' } } })
  checkOneSpan(others, data, (await shopOf(tx)).zone)
  askFirst('touches-bookings', await stayLines(tx, at, bayId, fromAt, toAt), {
    field: 'fromAt',
    lead: say('{name} is booked then. Closed all the same, these cars want another place:', {
      name: bay.name,
    }),
    accepted: input.accepted,
  })
  const { id } = await saveRow(audit, closures(tx), input, { data })
  return { id }
}

/** Opens the bay again; the audit line keeps what stood there. */
export function removeClosure(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, (tx, audit) => removeRow(audit, closures(tx), input))
}
