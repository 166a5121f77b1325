import type { OpeningHours } from '../../domain/calendar/index.ts'
import { checkCrewMember, checkUnique, type Skill } from '../../domain/shop/index.ts'
import { noJson } from '../../store/json.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { checkOrder } from '../desk/order.ts'
import { assertTold, newlyTouched, touchedLines } from '../floor/comingJobs.ts'
import { stepsOf, unmannedSteps } from './crewSteps.ts'

export interface CrewView {
  id: string
  name: string
  skills: Skill[]
  /** Null: whenever the shop is open. */
  weekly: OpeningHours[] | null
  absences: { id: string; fromAt: number; toAt: number; reason: string; version: number }[]
  archivedAt: number | null
  version: number
}

/** The crew in their order, each with the absences that are not over; archived members only when asked for. */
export async function listCrew(desk: Desk, input?: { archived?: boolean | undefined }): Promise<CrewView[]> {
  const rows = await desk.store.read.crewMember.findMany({
    where: input?.archived ? {} : { archivedAt: null },
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { position: 'asc' }, { id: 'asc' }],
    include: { absences: { where: { toAt: { gt: desk.now() } }, orderBy: { fromAt: 'asc' } } },
  })
  return rows.map(({ position: _, ...member }) => ({
    ...member,
    skills: member.skills as unknown as Skill[],
    weekly: member.weekly as unknown as OpeningHours[] | null,
    absences: member.absences.map(({ crewId: _, ...absence }) => absence),
  }))
}

export interface CrewInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  skills: Skill[]
  weekly: OpeningHours[] | null
  accepted?: boolean | undefined
}

/** Adds somebody to the crew, or changes them. Hours or skills a booked step relies on go only once `accepted`. */
export async function saveCrew(desk: Desk, input: CrewInput): Promise<{ id: string }> {
  const name = checkCrewMember(input)
  const data = { name, skills: input.skills, weekly: input.weekly as object[] | null }
  const written = { ...data, weekly: data.weekly ?? noJson }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const others = await tx.crewMember.findMany({ where: { archivedAt: null, NOT: { id: input.id ?? '' } } })
    checkUnique([...others.map(member => member.name), name], () => 'name', 'somebody')
    if (input.id === undefined) {
      const position = (await tx.crewMember.aggregate({ _max: { position: true } }))._max.position ?? -1
      const { id } = await tx.crewMember.create({ data: { ...written, position: position + 1 } })
      audit({ act: 'added', entity: 'crew', entityId: id, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.crewMember.findUnique({ where: { id } })
    const touchedBefore = await unmannedSteps(tx, id, desk.now())
    const { count } = await tx.crewMember.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...written, version: { increment: 1 } },
    })
    assertFresh(count, 'crew member', id)
    const touched = newlyTouched(touchedBefore, await unmannedSteps(tx, id, desk.now()))
    assertTold(touchedLines(touched), input.accepted, 'weekly', `${name} is booked for these steps:`)
    audit({ act: 'changed', entity: 'crew', entityId: id, detail: changesBetween(before!, data) })
    return { id }
  })
}

/** Takes somebody off the crew. Booked steps stay theirs, so they are named first, until it is `accepted`. */
export async function archiveCrew(
  desk: Desk,
  input: { id: string; version: number; accepted?: boolean | undefined },
): Promise<void> {
  const { id, version } = input
  const at = desk.now()
  await desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const lines = touchedLines(await stepsOf(tx, id, at))
    assertTold(
      lines,
      input.accepted,
      'id',
      'Booked steps are theirs; give them to somebody else on the board:',
    )
    const { count } = await tx.crewMember.updateMany({
      where: { id, version, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
    assertFresh(count, 'crew member', id)
    audit({ act: 'archived', entity: 'crew', entityId: id, detail: { booked: lines } })
  })
}

/** Takes somebody back into the crew, last in order. */
export async function restoreCrew(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const crew = await tx.crewMember.findMany()
    const member = crew.find(each => each.id === input.id)
    const present = crew.filter(each => each.archivedAt === null)
    if (member) checkUnique([...present.map(each => each.name), member.name], () => 'name', 'somebody')
    const { count } = await tx.crewMember.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: {
        archivedAt: null,
        position: Math.max(-1, ...crew.map(each => each.position)) + 1,
        version: { increment: 1 },
      },
    })
    assertFresh(count, 'crew member', input.id)
    audit({ act: 'restored', entity: 'crew', entityId: input.id })
  })
}

/** Puts the crew in the order given; everybody once. */
export async function orderCrew(desk: Desk, input: { ids: string[] }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const crew = await tx.crewMember.findMany({ where: { archivedAt: null }, select: { id: true } })
    checkOrder(
      input.ids,
      crew.map(member => member.id),
    )
    for (const [position, id] of input.ids.entries())
      await tx.crewMember.update({ where: { id }, data: { position } })
    audit({ act: 'ordered', entity: 'crew', entityId: '', detail: { ids: input.ids } })
  })
}
