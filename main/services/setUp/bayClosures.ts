import { Refusal } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { listed } from '../floor/comingJobs.ts'
import { stayLines } from './bays.ts'
import { checkOneSpan } from './oneSpan.ts'

export interface ClosureInput {
  id?: string | undefined
  version?: number | undefined
  bayId: string
  fromAt: number
  toAt: number
  reason: string
}

/**
 * Closes a bay for a time. Refused where it ends before it begins, overlaps another closure of the bay, or lies over a
 * booked stay, which it names.
 */
export async function saveClosure(desk: Desk, input: ClosureInput): Promise<{ id: string }> {
  const { bayId, fromAt, toAt } = input
  const data = { bayId, fromAt, toAt, reason: checkNote(input.reason, 'reason', 120) }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const bay = await tx.bay.findFirst({ where: { id: bayId, archivedAt: null } })
    if (!bay) throw new Refusal('missing', 'bayId', bayId, 'This bay is not in use any more; choose another.')
    const others = await tx.bayClosure.findMany({ where: { bayId, NOT: { id: input.id ?? '' } } })
    checkOneSpan(others, data, (await shopOf(tx)).zone)
    const lines = await stayLines(tx, desk.now(), bayId, fromAt, toAt)
    if (lines.length > 0)
      throw new Refusal(
        'closure-booked',
        'fromAt',
        fromAt,
        listed(`${bay.name} is booked then; move these cars or choose another time:`, lines),
      )
    if (input.id === undefined) {
      const { id } = await tx.bayClosure.create({ data })
      audit({ act: 'added', entity: 'closure', entityId: id, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.bayClosure.findUnique({ where: { id } })
    const { count } = await tx.bayClosure.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'closure', id)
    audit({ act: 'changed', entity: 'closure', entityId: id, detail: changesBetween(before!, data) })
    return { id }
  })
}

/** Opens the bay again; the audit line keeps what stood there. */
export async function removeClosure(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const row = await tx.bayClosure.findUnique({ where: { id: input.id } })
    const { count } = await tx.bayClosure.deleteMany({ where: input })
    assertFresh(count, 'closure', input.id)
    audit({ act: 'removed', entity: 'closure', entityId: input.id, detail: changesBetween({}, row!) })
  })
}
