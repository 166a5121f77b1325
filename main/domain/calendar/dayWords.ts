/** Dates in words. Months and weekdays by their place: January is 0, Monday is 0. */
export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

export const weekdayNames = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const

/** `2026-09-14` as "14 September 2026". */
export function dayWords(date: string): string {
  return `${Number(date.slice(8, 10))} ${monthNames[Number(date.slice(5, 7)) - 1]} ${date.slice(0, 4)}`
}
