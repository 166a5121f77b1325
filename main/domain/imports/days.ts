/** Days as lists write them. */
export const dayOrders = ['ymd', 'dmy', 'mdy'] as const
/** Order of year, month and day where a date does not begin with a four-digit year. */
export type DayOrder = (typeof dayOrders)[number]

const form = /^(\d{1,4})[-/. ]+(\d{1,2})[-/. ]+(\d{1,4})(?:[T ].*)?$/

/**
 * A day as `YYYY-MM-DD`; null where it is none. A year of two digits is of this century up to 49 and of the last from 50
 * on (common practice, no source). Any time of day behind it is passed over.
 */
export function readDay(text: string, order: DayOrder): string | null {
  const parts = form.exec(text.trim())
  if (!parts) return null
  const three = parts.slice(1, 4) as [string, string, string]
  const shape = three[0].length === 4 ? 'ymd' : order
  const [year, month, day] = [...'ymd'].map(letter => three[shape.indexOf(letter)]!) as [
    string,
    string,
    string,
  ]
  if (year.length !== 4 && year.length !== 2) return null
  if (month.length > 2 || day.length > 2) return null
  const whole = year.length === 4 ? Number(year) : Number(year) + (Number(year) < 50 ? 2000 : 1900)
  try {
    return Temporal.PlainDate.from(
      { year: whole, month: Number(month), day: Number(day) },
      { overflow: 'reject' },
    ).toString()
  } catch {
    return null
  }
}

/**
 * The orders in which the most of these texts can be read: one where the texts settle it, several where only a person
 * knows. Texts that are no days in any order count for none.
 */
export function ordersFitting(texts: readonly string[]): DayOrder[] {
  const counts = dayOrders.map(order => texts.filter(text => readDay(text, order) !== null).length)
  const most = Math.max(...counts)
  const fitting = dayOrders.filter((_, i) => counts[i] === most)
  // All begin with the year: they say it themselves, whatever is chosen.
  const alike = texts.every(text => new Set(dayOrders.map(order => readDay(text, order))).size === 1)
  return alike ? ['ymd'] : fitting
}
