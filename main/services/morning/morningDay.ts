import { dateOf, minuteWords, type Span } from '../../domain/calendar/index.ts'
import type { ProductsById } from '../../domain/floor/index.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, plateWords, vehicleWords } from '../floor/jobRows.ts'

/** One day of the shop, midnight to midnight. */
export interface Day {
  readonly date: string
  readonly fromAt: number
  readonly toAt: number
  readonly floor: Floor
  readonly products: ProductsById
  readonly open: readonly Span[]
}

/** A minute as the day's sheet says it: the clock alone on that day, with the weekday else. */
export function daySays(day: Day, at: number): string {
  return minuteWords(at, day.floor.zone, day.fromAt)
}

export function isOn({ fromAt, toAt }: Day, at: number): boolean {
  return fromAt <= at && at < toAt
}

/** Whether the sheet is today's: what is overdue belongs on it. */
export function isToday({ date, floor }: Day): boolean {
  return dateOf(floor.nowAt, floor.zone) === date
}

export function carOf(row: JobRow) {
  return {
    jobId: row.id,
    jobNumber: row.number,
    plate: plateWords(row.vehicle.plate),
    customerName: row.customer.name,
    vehicleWords: vehicleWords(row.vehicle),
  }
}
