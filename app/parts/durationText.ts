import { say } from '../../main/domain/language/index.ts'

/** Nearly two years: the api takes no more. */
const mostMinutes = 1_000_000

/** Minutes of a unit by the letter its name begins with: weeks, days, hours and minutes, in English and in German. */
const unitOf: Readonly<Record<string, number>> = { w: 10_080, d: 1440, t: 1440, h: 60, s: 60, m: 1 }

/**
 * A duration as somebody types it, in whole minutes; null when it is none. A bare number is minutes; h, d and w count
 * hours, days and weeks ("90", "1 h 30", "1:30", "1.5 h", "7 d", "2 Tage 4 h").
 */
export function readDuration(text: string): number | null {
  const plain = text.trim().toLowerCase().replaceAll(',', '.').replaceAll(/\s+/g, ' ')
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(plain)
  if (clock) return Number(clock[1]) * 60 + Number(clock[2])
  if (plain === '') return null
  let rest = plain
  let minutes = 0
  let last = Number.POSITIVE_INFINITY
  while (rest !== '') {
    const part =
      /^(\d+(?:\.\d+)?) ?(w(?:eeks?|ochen?)?|d(?:ays?)?|t(?:age?n?|g)?|h(?:ours?|rs?)?|std|stunden?|m(?:in(?:ute[sn]?|s)?)?)?(?: |(?=\d)|$)/.exec(
        rest,
      )
    if (!part) return null
    const unit = unitOf[part[2]?.[0] ?? 'm']!
    if (unit >= last) return null
    minutes += Number(part[1]) * unit
    last = unit
    rest = rest.slice(part[0].length)
  }
  if (minutes > mostMinutes) return null
  return Number.isInteger(Math.round(minutes * 1e6) / 1e6) ? Math.round(minutes) : null
}

/** Minutes as `readDuration` reads them back: "45 min", "1 h 30", "12 h", "7 d", "2 d 4 h". */
export function durationText(minutes: number): string {
  const days = minutes >= 2880 || minutes === 1440 ? Math.floor(minutes / 1440) : 0
  const hours = Math.floor((minutes - days * 1440) / 60)
  const rest = minutes % 60
  if (days === 0 && hours === 0) return say('{rest} min', { rest })
  const parts = [
    days > 0 ? say('{days} d', { days }) : '',
    hours > 0 || (days > 0 && rest > 0) ? `${hours} h` : '',
  ]
  const tail = rest > 0 ? String(rest).padStart(2, '0') : ''
  return [...parts, tail].filter(Boolean).join(' ')
}
