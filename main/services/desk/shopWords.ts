import { dateOf, monthNames, weekdayNames, zonedOf } from '../../domain/calendar/index.ts'
import type { Words } from '../../domain/schedule/index.ts'

/**
 * A minute as the desk says it: `14:00` today, `Tuesday 03:20` within six days either way, `Tue 21 April 03:20`
 * beyond.
 */
export function minuteWords(at: number, zone: string, nowAt: number): string {
  const time = zonedOf(at, zone)
  const clock = time.toPlainTime().toString({ smallestUnit: 'minute' })
  const today = Temporal.PlainDate.from(dateOf(nowAt, zone))
  const days = today.until(time.toPlainDate(), { largestUnit: 'day' }).days
  if (days === 0) return clock
  if (Math.abs(days) <= 6) return `${weekdayNames[time.dayOfWeek - 1]} ${clock}`
  return dayWords(at, zone)
}

/** A minute with its date, whatever today is: `Tue 21 April 03:20`. */
export function dayWords(at: number, zone: string): string {
  const time = zonedOf(at, zone)
  const clock = time.toPlainTime().toString({ smallestUnit: 'minute' })
  return `${weekdayNames[time.dayOfWeek - 1]!.slice(0, 3)} ${time.day} ${monthNames[time.month - 1]} ${clock}`
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
