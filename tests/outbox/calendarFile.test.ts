// RFC 5545: folding 3.1, text 3.3.11, times 3.3.5; the cases name their sources. Read back by another program: ical.js.
import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { minuteOf } from '../../main/domain/calendar/index.ts'
import { type CalendarEvent, calendarFile } from '../../main/outbox/calendarFile.ts'
import { type Case, runCases } from '../reference/cases.ts'

const firstSet = [
  [/^fold-/, 'fold'],
  [/^escape-/, 'text-escape'],
  [/./, 'elsewhere'],
] as const

const at = minuteOf(Temporal.Instant.from('2026-04-15T14:00:00Z'))
const event = (change: Partial<CalendarEvent>): CalendarEvent => ({
  id: 'a@example.com',
  summary: 'Visit',
  time: { fromAt: at, toAt: at + 90 },
  status: 'tentative',
  ...change,
})

/** The lines as they travel, and as they are meant. */
function linesOf(file: string) {
  const physical = file.split('\r\n')
  return { physical, logical: file.replaceAll(/\r\n[ \t]/g, '').split('\r\n') }
}

interface Folded {
  maxOctetsPerLine?: number
  unfoldsTo?: string
  oneFolding?: string
  octets?: number
  mustFold?: boolean
  leastLines?: number
}

runCases('communications', firstSet, {
  fold: ({ input: { line: asked }, expected }: Case<{ line: string }, Folded>) => {
    const text = asked.slice(asked.indexOf(':') + 1)
    const { physical, logical } = linesOf(calendarFile('Shop', at, [event({ description: text })]))
    const begins = physical.findIndex(line => line.startsWith('DESCRIPTION:'))
    const ends = physical.findIndex((line, i) => i > begins && !line.startsWith(' '))
    // Ours is at least as long: it has the longer name.
    expect(ends - begins).toBeGreaterThanOrEqual(expected.leastLines ?? 1)
    if (expected.mustFold) expect(ends - begins).toBeGreaterThan(1)
    if (expected.octets) expect(Buffer.byteLength(asked)).toBe(expected.octets)
    if (expected.oneFolding && asked.startsWith('DESCRIPTION:'))
      expect(linesOf(expected.oneFolding).logical).toEqual(
        logical.filter(line => line.startsWith('DESCRIPTION:')),
      )
    expect([expected.unfoldsTo ?? asked, expected.maxOctetsPerLine ?? 75]).toEqual([asked, 75])
    for (const line of physical) expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75)
    // A character that was split would not come back from its bytes.
    for (const line of physical) expect(line).not.toMatch(/[\ud800-\udbff]$|^ ?[\udc00-\udfff]/)
    expect(logical).toContain(`DESCRIPTION:${text}`)
  },
  'text-escape': (entry: Case<{ text: string }, { escaped: string }>) => {
    const { logical } = linesOf(calendarFile('Shop', at, [event({ description: entry.input.text })]))
    expect(logical).toContain(`DESCRIPTION:${entry.expected.escaped}`)
  },
})

const read = (file: string) =>
  new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map(each => new ICAL.Event(each))

describe('a calendar file', () => {
  it('is read by another program as it was meant, whatever is written in it', () => {
    // Everything RFC 5545 lets a text hold: no control signs but tab and line end.
    const text = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 120 })
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it leaves out
      .map(each => each.replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, ''))
    fc.assert(
      fc.property(text, text, fc.integer({ min: 0, max: 60_000_000 }), (summary, description, fromAt) => {
        const file = calendarFile('Shop', at, [
          event({ summary: `x${summary}`, description, time: { fromAt, toAt: fromAt + 30 } }),
        ])
        const [got] = read(file)
        expect(got!.summary).toBe(`x${summary}`.replaceAll(/\s+/g, ' ').trim())
        expect(got!.description ?? '').toBe(description)
        expect(got!.startDate.toUnixTime()).toBe(fromAt * 60)
        expect(got!.endDate.toUnixTime()).toBe((fromAt + 30) * 60)
      }),
    )
  })

  it('gives times in UTC and whole days as dates, also where the computer is elsewhere', () => {
    const file = calendarFile('Shop', at, [
      event({}),
      event({ id: 'b@example.com', time: { fromOn: '2026-03-08', untilOn: '2026-03-09' } }),
    ])
    const { logical } = linesOf(file)
    // RFC 5545 section 3.3.5, form 2; a local time would need a zone, an offset is not allowed.
    expect(logical.filter(line => /^DT(START|END|STAMP)/.test(line))).toEqual([
      'DTSTAMP:20260415T140000Z',
      'DTSTART:20260415T140000Z',
      'DTEND:20260415T153000Z',
      'DTSTAMP:20260415T140000Z',
      'DTSTART;VALUE=DATE:20260308',
      'DTEND;VALUE=DATE:20260309',
    ])
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true)
  })

  it('bears its shop’s name, whatever signs are in it', () => {
    const name = 'Tern, Lane; Paint \\ Care'
    expect(linesOf(calendarFile(name, at, [event({})])).logical).toContain(
      'NAME:Tern\\, Lane\\; Paint \\\\ Care',
    )
  })

  it('grows no line from a line end in a name', () => {
    const file = calendarFile('Shop\r\nATTENDEE:mailto:x@example.com', at, [
      event({ summary: 'A\r\nBEGIN:VALARM', location: 'B\nATTACH:https://example.com' }),
    ])
    expect(linesOf(file).logical.filter(line => /^(ATTENDEE|BEGIN:VALARM|ATTACH)/.test(line))).toEqual([])
  })
})
