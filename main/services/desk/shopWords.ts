import { dateOf, weekdayDate, weekdayName, weekdayWillDo, zonedOf } from '../../domain/calendar/index.ts'
import type { Words } from '../../domain/schedule/index.ts'

/**
 * A minute as the desk says it: `14:00` today, `Tuesday 03:20` within six days either way, `Tue 21 April 03:20`
 * beyond.
 */
export function minuteWords(at: number, zone: string, nowAt: number): string {
  const [date, today] = [dateOf(at, zone), dateOf(nowAt, zone)]
  if (date === today) return clockWords(at, zone)
  if (weekdayWillDo(date, today)) return `${weekdayName(date)} ${clockWords(at, zone)}`
  return datedWords(at, zone, nowAt)
}

/** A minute with its date: `Tue 21 April 03:20`, with the year where it is another: `Sat 2 January 2027 09:00`. */
export function datedWords(at: number, zone: string, nowAt: number): string {
  return `${weekdayDate(dateOf(at, zone), dateOf(nowAt, zone))} ${clockWords(at, zone)}`
}

/** A minute as what is kept for years says it: `Wed 15 April 2026, 09:00`. */
export function momentWords(at: number, zone: string): string {
  return `${weekdayDate(dateOf(at, zone))}, ${clockWords(at, zone)}`
}

function clockWords(at: number, zone: string): string {
  return zonedOf(at, zone).toPlainTime().toString({ smallestUnit: 'minute' })
}

/** A duration: `45 min`, `1 h 30 min`, `2 days 4 h`. */
export function durationWords(minutes: number): string {
  const days = Math.floor(minutes / 1440)
  const hours = Math.floor((minutes % 1440) / 60)
  const rest = minutes % 60
  if (minutes >= 2 * 1440) return [`${days} days`, hours > 0 ? `${hours} h` : ''].filter(Boolean).join(' ')
  const whole = Math.floor(minutes / 60)
  return [whole > 0 ? `${whole} h` : '', rest > 0 || whole === 0 ? `${rest} min` : '']
    .filter(Boolean)
    .join(' ')
}

const capabilityWords: Record<string, string> = {
  wet: 'washing',
  polish: 'polishing',
  clean: 'clean work',
  cure: 'curing',
}

const skillWords: Record<string, string> = { wash: 'washing', polish: 'polishing', coat: 'coating' }

export interface Named {
  readonly zone: string
  readonly nowAt: number
  readonly bayNames: ReadonlyMap<string, string>
  readonly crewNames: ReadonlyMap<string, string>
  /** Whose a booked stay is: `KFR 204 (job 12)`. */
  readonly jobNames: ReadonlyMap<string, string>
}

/** The shop's own words for the scheduler's reasons, about a job with these steps. */
export function wordsFor(shop: Named, stepNames: readonly string[]): Words {
  return {
    minute: at => minuteWords(at, shop.zone, shop.nowAt),
    duration: durationWords,
    bay: id => shop.bayNames.get(id) ?? 'a bay that is no longer there',
    person: id => shop.crewNames.get(id) ?? 'somebody no longer of the crew',
    skill: skill => skillWords[skill] ?? skill,
    capability: capability => capabilityWords[capability] ?? capability,
    step: index => stepNames[index] ?? `step ${index + 1}`,
    job: id => shop.jobNames.get(id) ?? 'another job',
  }
}

/** Words made a sentence: a capital at the front, a full stop at the end. */
export function sentence(words: string): string {
  const said = words.charAt(0).toUpperCase() + words.slice(1)
  return /[.!?]$/.test(said) ? said : `${said}.`
}

/** `a`, `a and b`, `a, b and c`. */
export function listWords(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
