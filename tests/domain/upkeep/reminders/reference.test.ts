// RFC 2369 section 3.2, RFC 8058; sending hours across clock changes: IANA time zone database. Sources with the cases.
import { expect } from 'vitest'
import { zonedOf } from '../../../../main/domain/calendar/index.ts'
import { instantOf } from '../../../../main/domain/calendar/instants.ts'
import { nextSendAt } from '../../../../main/domain/upkeep/reminders/sendHours.ts'
import { unsubscribeHeaders } from '../../../../main/domain/upkeep/reminders/unsubscribe.ts'
import { type Case, runCases } from '../../../reference/cases.ts'
import { utc } from './arbitraries.ts'

const firstSet = [
  [/^mailto-unsubscribe/, 'list-unsubscribe'],
  [/./, 'elsewhere'],
] as const

const minutes = (wall: string) => {
  const [hour, minute] = wall.split(':').map(Number)
  return hour! * 60 + minute!
}

runCases('communications', firstSet, {
  'list-unsubscribe': (entry: Case<{ mailto?: string; https?: string }, Record<string, string>>) => {
    expect(unsubscribeHeaders(entry.input)).toEqual(entry.expected)
  },

  'send-window': (
    entry: Case<
      { zone: string; windowFrom: string; windowTo: string; nowUtc: string },
      { sendAtUtc: string; sendAtLocal: string }
    >,
  ) => {
    const { zone, windowFrom, windowTo, nowUtc } = entry.input
    const hours = {
      fromMin: minutes(windowFrom),
      toMin: minutes(windowTo),
      closedWeekdays: [],
      closedDates: [],
    }
    const sendAt = nextSendAt(utc(nowUtc), hours, zone)!
    expect(instantOf(sendAt).toString({ smallestUnit: 'minute' })).toBe(entry.expected.sendAtUtc)
    expect(zonedOf(sendAt, zone).toPlainDateTime().toString({ smallestUnit: 'minute' })).toBe(
      entry.expected.sendAtLocal,
    )
  },
})
