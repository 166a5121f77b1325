import { checkCalendar, type WallSpan } from '../../domain/calendar/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import { tellOfHours } from './hoursTold.ts'

export interface ExceptionView {
  id: string
  /** `YYYY-MM-DD` */
  date: string
  /** The day's hours in place of the weekly ones; empty: closed. */
  hours: WallSpan[]
  note: string
  version: number
}

/** The dates whose hours differ, past ones included, in order. */
export async function listExceptions(desk: Desk): Promise<ExceptionView[]> {
  const rows = await desk.store.read.hoursException.findMany({ orderBy: { date: 'asc' } })
  return rows.map(row => ({ ...row, hours: row.hours as unknown as WallSpan[] }))
}

export interface ExceptionInput {
  id?: string | undefined
  version?: number | undefined
  date: string
  hours: WallSpan[]
  note: string
  accepted?: boolean | undefined
}

/** Gives one date hours of its own. Refuses a second entry of a date, and tells of bookings left outside. */
export async function saveException(desk: Desk, input: ExceptionInput): Promise<{ id: string }> {
  const note = checkNote(input.note, 'note', 120)
  checkDay(input)
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const before = await calendarOf(tx)
    const twin = await tx.hoursException.findUnique({ where: { date: input.date } })
    if (twin && twin.id !== input.id)
      throw new Refusal(
        'date-twice',
        'date',
        input.date,
        `${input.date} already has hours of its own; change that entry, or remove it first.`,
      )
    const data = { date: input.date, hours: input.hours as object[], note }
    let id = input.id
    if (id === undefined) {
      id = (await tx.hoursException.create({ data })).id
      audit({ act: 'added', entity: 'hours', entityId: id, detail: data })
    } else {
      const old = await tx.hoursException.findUnique({ where: { id } })
      const { count } = await tx.hoursException.updateMany({
        where: { id, version: input.version ?? 0 },
        data: { ...data, version: { increment: 1 } },
      })
      assertFresh(count, 'date', id)
      audit({ act: 'changed', entity: 'hours', entityId: id, detail: changesBetween(old ?? {}, data) })
    }
    await tellOfHours(tx, { before, nowAt: desk.now(), field: 'hours', accepted: input.accepted })
    return { id }
  })
}

/** Gives a date its weekday's hours again. */
export async function removeException(
  desk: Desk,
  input: { id: string; version: number; accepted?: boolean | undefined },
): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const before = await calendarOf(tx)
    const row = await tx.hoursException.findUnique({ where: { id: input.id } })
    const { count } = await tx.hoursException.deleteMany({ where: { id: input.id, version: input.version } })
    assertFresh(count, 'date', input.id)
    audit({
      act: 'removed',
      entity: 'hours',
      entityId: input.id,
      detail: changesBetween({}, { date: row!.date, hours: row!.hours, note: row!.note }),
    })
    await tellOfHours(tx, { before, nowAt: desk.now(), field: 'date', accepted: input.accepted })
  })
}

/** The checks of a calendar on one date, with the fields named as this input names them. */
function checkDay({ date, hours }: { date: string; hours: WallSpan[] }): void {
  try {
    checkCalendar({ zone: 'UTC', weekly: [], exceptions: [{ date, hours }] })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    throw new Refusal(error.code, error.field.replace('exceptions.0.', ''), error.value, error.message)
  }
}
