import type { Confidence } from '../life/confidence.ts'
import type { Channel } from '../reminders/consent.ts'
import { type ShareRange, wilson } from './wilson.ts'

/** What became of one visit's reminders, under the channel and template of the last one. */
export interface RemindedVisit {
  readonly channel: Channel
  readonly templateId: string
  readonly booked: boolean
  readonly came: boolean
}

export interface ResultShare {
  readonly count: number
  readonly of: number
  readonly range: ShareRange
  /** "8 of 10 (49 to 94 %)": no figure finer than the count can bear. */
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

/**
 * How many reminded owners booked and came, by channel and template, most reminded first. A share from few is a wide
 * range, and no single percentage is given.
 */
export function reminderResults(
  visits: readonly RemindedVisit[],
  confidence: Confidence = 0.95,
): ResultLine[] {
  const groups = new Map<string, RemindedVisit[]>()
  for (const visit of visits) {
    const key = `${visit.channel} ${visit.templateId}`
    const group = groups.get(key)
    if (group) group.push(visit)
    else groups.set(key, [visit])
  }
  const lines = [...groups.values()].map((group): ResultLine => {
    const booked = group.filter(visit => visit.booked)
    const came = booked.filter(visit => visit.came)
    return {
      channel: group[0]!.channel,
      templateId: group[0]!.templateId,
      reminded: group.length,
      booked: share(booked.length, group.length, confidence),
      came: share(came.length, booked.length, confidence),
    }
  })
  return lines.sort(
    (a, b) =>
      b.reminded - a.reminded ||
      `${a.channel} ${a.templateId}`.localeCompare(`${b.channel} ${b.templateId}`, 'en'),
  )
}

function share(count: number, of: number, confidence: Confidence): ResultShare {
  const range = wilson(count, of, confidence)
  const low = Math.floor(range.low * 100)
  const high = Math.ceil(range.high * 100)
  return { count, of, range, words: of === 0 ? 'none yet' : `${count} of ${of} (${low} to ${high} %)` }
}
