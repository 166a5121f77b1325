import { say, word } from '../../language/index.ts'
import type { Confidence } from '../life/confidence.ts'
import type { Channel } from '../reminders/consent.ts'
import { type ShareRange, wilson } from './wilson.ts'

/** How many visits were written about last by one channel and template, and what became of them. */
interface RemindedVisits {
  readonly channel: Channel
  readonly templateId: string
  readonly reminded: number
  /** Of those reminded. */
  readonly booked: number
  /** Of those booked. */
  readonly came: number
}

export interface ResultShare {
  readonly count: number
  readonly of: number
  readonly range: ShareRange
  /** So few that the share may be almost anything: not to be compared. */
  readonly few: boolean
  /** "8 of 10 booked": no figure finer than the count can bear. */
  readonly words: string
}

export interface ResultLine {
  readonly channel: Channel
  readonly templateId: string
  readonly reminded: number
  readonly booked: ResultShare
  /** Of those that booked. */
  readonly came: ResultShare
}

/** A range wider than a quarter of all tells no template from another. */
const WIDEST = 0.25

/**
 * How many reminded owners booked and came, by channel and template, most reminded first. A share from few is a wide
 * range, and no single percentage is given. Each channel and template comes once.
 */
export function reminderResults(
  groups: readonly RemindedVisits[],
  confidence: Confidence = 0.95,
): ResultLine[] {
  const lines = groups.map(
    ({ booked, came, ...group }): ResultLine => ({
      ...group,
      booked: share(booked, group.reminded, confidence, bookedWords),
      came: share(came, booked, confidence, cameWords),
    }),
  )
  return lines.sort(
    (a, b) =>
      b.reminded - a.reminded ||
      `${a.channel} ${a.templateId}`.localeCompare(`${b.channel} ${b.templateId}`, 'en'),
  )
}

const bookedWords = word('{count} of {of} booked')
const cameWords = word('{count} of {of} came')

function share(count: number, of: number, confidence: Confidence, words: string): ResultShare {
  const range = wilson(count, of, confidence)
  const few = range.high - range.low > WIDEST
  return { count, of, range, few, words: of === 0 ? say('none yet') : say(words, { count, of }) }
}
