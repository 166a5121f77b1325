import { dateOfDay, dayNumber } from '../../calendar/index.ts'

/** What an owner's answer to a reminder was, or that there was none. */
export type Outcome = 'booked' | 'later' | 'no' | 'unreachable' | 'sold'

/** How a shop goes on after an answer. */
export interface FollowUp {
  readonly maxTries: number
  /** Days until the next try after nobody was reached, and after "later" without a date. */
  readonly againDays: number
  readonly laterDays: number
}

export type NextStep =
  /** Nothing more is written: the visit is booked. */
  | { readonly next: 'wait-for-visit' }
  | { readonly next: 'try'; readonly tryNo: number; readonly on: string }
  /** No more about this visit (the plan's next one comes in its time), or none about this car at all. */
  | {
      readonly next: 'stop'
      readonly scope: 'visit' | 'car'
      readonly because: 'said-no' | 'tries-used' | 'sold'
    }

/**
 * What follows from an outcome on a day, after the nth try: the next try and its day, or the end. After `maxTries` it
 * stops whatever was said, other than a booking. `laterOn` is the day the owner named, if one was; never before
 * tomorrow.
 */
export function afterOutcome(
  outcome: Outcome,
  tryNo: number,
  today: string,
  rules: FollowUp,
  laterOn: string | null = null,
): NextStep {
  if (outcome === 'booked') return { next: 'wait-for-visit' }
  if (outcome === 'sold') return { next: 'stop', scope: 'car', because: 'sold' }
  if (outcome === 'no') return { next: 'stop', scope: 'visit', because: 'said-no' }
  if (tryNo >= rules.maxTries) return { next: 'stop', scope: 'visit', because: 'tries-used' }
  const now = dayNumber(today, 'today')
  const wait = outcome === 'later' ? rules.laterDays : rules.againDays
  const wanted = outcome === 'later' && laterOn !== null ? dayNumber(laterOn, 'laterOn') : now + wait
  return { next: 'try', tryNo: tryNo + 1, on: dateOfDay(Math.max(now + 1, wanted)) }
}
