import type { OpeningHours } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkCrewMember, type Skill } from '../../domain/shop/index.ts'
import { noJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { ListInput, RowAccepted } from '../desk/inputs.ts'
import {
  archiveRow,
  assertNameFree,
  lastPosition,
  orderRows,
  type RowSeen,
  restoreRow,
  rowsShown,
  saveRow,
} from '../desk/keep.ts'
import { newlyTouched, touchedLines } from '../floor/comingJobs.ts'
import { stepsOf, unmannedSteps } from './crewSteps.ts'
import type { CrewInput } from './inputs.ts'

export type CrewView = Awaited<ReturnType<typeof listCrew>>[number]

const crew = (tx: Tx) => ({ table: tx.crewMember, entity: 'crew', noun: word('crew member') })

/** The crew in their order, each with the absences that are not over; archived members only when asked for. */
export async function listCrew(desk: Desk, input?: ListInput) {
  const rows = await desk.store.read.crewMember.findMany({
    ...rowsShown(input, { position: 'asc' }, { id: 'asc' }),
    include: { absences: { where: { toAt: { gt: desk.now() } }, orderBy: { fromAt: 'asc' } } },
  })
  return rows.map(({ position: _, ...member }) => ({
    ...member,
    skills: member.skills as Skill[],
    weekly: member.weekly as OpeningHours[] | null,
    absences: member.absences.map(({ crewId: _, ...absence }) => absence),
  }))
}

/** Adds somebody to the crew, or changes them. Hours or skills a booked step relies on go only once `accepted`. */
export function saveCrew(desk: Desk, input: CrewInput): Promise<{ id: string }> {
  const name = checkCrewMember(input)
  const { noticeDays } = input
  const data = {
    name,
    skills: input.skills,
    ...(noticeDays !== undefined && { noticeDays }),
    weekly: input.weekly ? (input.weekly as object[]) : noJson,
  }
  return act(desk, async (tx, audit, at) => {
    if (noticeDays !== undefined && noticeDays < 0)
      refuse('notice-negative', { noticeDays }, say('Days of notice are 0 or more.'))
    await assertNameFree(tx.crewMember, { id: input.id, name }, say('somebody'))
    const unmanned = () => (input.id === undefined ? [] : unmannedSteps(tx, input.id, at))
    const before = await unmanned()
    const added = { position: await lastPosition(tx.crewMember) }
    const { id } = await saveRow(audit, crew(tx), input, { data, added })
    askFirst('touches-bookings', touchedLines(newlyTouched(before, await unmanned())), {
      field: 'weekly',
      lead: say('{name} is booked for these steps:', { name }),
      accepted: input.accepted,
    })
    return { id }
  })
}

/** Takes somebody off the crew. Booked steps stay theirs, so they are named first, until it is `accepted`. */
export function archiveCrew(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const booked = touchedLines(await stepsOf(tx, input.id, at))
    askFirst('touches-bookings', booked, {
      field: 'id',
      lead: say('Booked steps are theirs; give them to somebody else on the board:'),
      accepted: input.accepted,
    })
    await archiveRow(audit, crew(tx), input, { at, detail: { booked } })
  })
}

/** Takes somebody back into the crew, last in order. */
export function restoreCrew(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, crew(tx), input, { position: await lastPosition(tx.crewMember) })
    const member = await tx.crewMember.findUniqueOrThrow({ where: { id: input.id } })
    await assertNameFree(tx.crewMember, member, say('somebody'))
  })
}

/** Puts the crew in the order given; everybody once. */
export function orderCrew(desk: Desk, input: { ids: string[] }): Promise<void> {
  return act(desk, (tx, audit) => orderRows(audit, crew(tx), input.ids))
}
