/** The time of a logger's row, in the forms loggers write. */
import { atWall, minuteOf } from '../calendar/index.ts'

/** Order of year, month and day where a date begins with anything but a four-digit year. */
export type DateOrder = 'ymd' | 'mdy' | 'dmy'

export interface ReadTime {
  readonly at: number
  /** The other moment a wall time may mean in the hour a clock repeats; else null. */
  readonly laterAt: number | null
}

const offsetForm = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/i
const epochForm = /^\d{10}(\d{3})?$/
const wallForm =
  /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})[T ,]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*(?:([ap])\.?m\.?)?$/i

/**
 * Reads an instant with its offset (`2026-03-08T07:30Z`), seconds or milliseconds since 1970, or wall time of `zone`
 * with or without seconds, on the 24- or the 12-hour clock. Seconds are dropped. Null when it is none of these.
 */
export function readTime(text: string, order: DateOrder, zone: string): ReadTime | null {
  const time = text.trim()
  if (epochForm.test(time)) return { at: Math.floor(Number(time.slice(0, 10)) / 60), laterAt: null }
  if (offsetForm.test(time)) {
    try {
      return { at: minuteOf(Temporal.Instant.from(time.replace(' ', 'T'))), laterAt: null }
    } catch {
      return null
    }
  }
  const parts = wallForm.exec(time)
  return parts && wallTime(parts, order, zone)
}

function wallTime(parts: RegExpExecArray, order: DateOrder, zone: string): ReadTime | null {
  const date = parts.slice(1, 4) as [string, string, string]
  const shape = date[0].length === 4 ? 'ymd' : order
  const [year, month, day] = [...'ymd'].map(letter => Number(date[shape.indexOf(letter)]))
  const hour = hourOf(Number(parts[4]), parts[7]?.toLowerCase())
  const minute = Number(parts[5])
  if (hour === null || minute > 59 || Number(parts[6] ?? 0) > 59) return null
  try {
    const fullYear = year! < 100 ? 2000 + year! : year!
    const plain = Temporal.PlainDate.from(
      { year: fullYear, month: month!, day: day! },
      { overflow: 'reject' },
    )
    const wallMin = hour * 60 + minute
    const at = atWall(plain.toString(), wallMin, zone)
    const later = plain.toPlainDateTime({ hour, minute }).toZonedDateTime(zone, { disambiguation: 'later' })
    // In a skipped hour both readings of 'compatible' and 'later' agree; only a repeated one gives two.
    return { at, laterAt: minuteOf(later) === at ? null : minuteOf(later) }
  } catch {
    return null
  }
}

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null
  if (hour < 1 || hour > 12) return null
  return (hour % 12) + (half === 'p' ? 12 : 0)
}
