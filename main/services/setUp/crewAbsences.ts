import { Refusal } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { assertTold, newlyTouched, touchedLines } from '../floor/comingJobs.ts'
import { unmannedSteps } from './crewSteps.ts'
import { checkOneSpan } from './oneSpan.ts'

export interface AbsenceInput {
  id?: string | undefined
  version?: number | undefined
  crewId: string
  fromAt: number
  toAt: number
  reason: string
  accepted?: boolean | undefined
}

/**
 * Notes that somebody is away for a time. Refused where it ends before it begins or overlaps another absence; the booked
 * steps it leaves without them are named until it is `accepted` (nobody plans an illness).
 */
export async function saveAbsence(desk: Desk, input: AbsenceInput): Promise<{ id: string }> {
  const { crewId, fromAt, toAt } = input
  const data = { crewId, fromAt, toAt, reason: checkNote(input.reason, 'reason', 120) }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const member = await tx.crewMember.findFirst({ where: { id: crewId, archivedAt: null } })
    if (!member)
      throw new Refusal(
        'missing',
        'crewId',
        crewId,
        'This person is not of the crew any more; choose another.',
      )
    const others = await tx.crewAbsence.findMany({ where: { crewId, NOT: { id: input.id ?? '' } } })
    checkOneSpan(others, data, (await shopOf(tx)).zone)
    const touchedBefore = await unmannedSteps(tx, crewId, desk.now())
    let id = input.id
    if (id === undefined) {
      id = (await tx.crewAbsence.create({ data })).id
      audit({ act: 'added', entity: 'absence', entityId: id, detail: data })
    } else {
      const before = await tx.crewAbsence.findUnique({ where: { id } })
      const { count } = await tx.crewAbsence.updateMany({
        where: { id, version: input.version ?? 0 },
        data: { ...data, version: { increment: 1 } },
      })
      assertFresh(count, 'absence', id)
      audit({ act: 'changed', entity: 'absence', entityId: id, detail: changesBetween(before!, data) })
    }
    const touched = newlyTouched(touchedBefore, await unmannedSteps(tx, crewId, desk.now()))
    assertTold(touchedLines(touched), input.accepted, 'fromAt', `${member.name} is booked for these steps:`)
    return { id }
  })
}

/** Takes an absence out; the audit line keeps what stood there. */
export async function removeAbsence(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const row = await tx.crewAbsence.findUnique({ where: { id: input.id } })
    const { count } = await tx.crewAbsence.deleteMany({ where: input })
    assertFresh(count, 'absence', input.id)
    audit({ act: 'removed', entity: 'absence', entityId: input.id, detail: changesBetween({}, row!) })
  })
}
