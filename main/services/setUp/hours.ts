import { checkCalendar, type WallSpan } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse, withField } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { RowAccepted } from '../desk/inputs.ts'
import { removeRow, saveRow } from '../desk/keep.ts'
import { calendarOf } from '../desk/shopView.ts'
import { askOfHours } from './askOfHours.ts'
import type { ExceptionInput } from './inputs.ts'

export type ExceptionView = Awaited<ReturnType<typeof listExceptions>>[number]

const exceptions = (tx: Tx) => ({ table: tx.hoursException, entity: 'hours', noun: 'date' })

/** The dates whose hours differ, past ones included, in order. */
export async function listExceptions(desk: Desk) {
  const rows = await desk.store.read.hoursException.findMany({ orderBy: { date: 'asc' } })
  return rows.map(row => ({ ...row, hours: fromJson<WallSpan[]>(row.hours) }))
}

/** Gives one date hours of its own. Refuses a second entry of a date, and tells of bookings left outside. */
export function saveException(desk: Desk, input: ExceptionInput): Promise<{ id: string }> {
  const { date, accepted } = input
  const data = { date, hours: input.hours as object[], note: checkNote(input.note, 'note', 120) }
  checkDay(input)
  return act(desk, async (tx, audit, at) => {
    const before = await calendarOf(tx)
    const twin = await tx.hoursException.findUnique({ where: { date } })
    if (twin && twin.id !== input.id)
      refuse(
        'date-twice',
        { date },
        say('{date} already has hours of its own; change that entry, or remove it first.', { date }),
      )
    const { id } = await saveRow(audit, exceptions(tx), input, { data })
    await askOfHours(tx, { before, nowAt: at, field: 'hours', accepted })
    return { id }
  })
}

/** Gives a date its weekday's hours again. */
export function removeException(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const before = await calendarOf(tx)
    await removeRow(audit, exceptions(tx), input)
    await askOfHours(tx, { before, nowAt: at, field: 'date', accepted: input.accepted })
  })
}

/** The checks of a calendar on one date, with the fields named as this input names them. */
function checkDay({ date, hours }: { date: string; hours: WallSpan[] }): void {
  try {
    checkCalendar({ zone: 'UTC', weekly: [], exceptions: [{ date, hours }] })
  } catch (error) {
    throw withField(error, field => field.replace('exceptions.0.', ''))
  }
}
