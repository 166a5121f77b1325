import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ConsentEntry } from '../../../../main/domain/upkeep/reminders/consent.ts'
import {
  maySend,
  type NoSendCode,
  type SendQuestion,
} from '../../../../main/domain/upkeep/reminders/maySend.ts'
import { DAY, DRAFT, FREE, GIVEN, NOW, questions, utc } from './arbitraries.ts'

/** The rules once more, in other words and another order, each on its own: what must hold whenever a message goes out. */
const LAWS: Record<string, (question: SendQuestion) => boolean> = {
  'somebody approved it': ({ message }) => message.state === 'approved' && !message.stopAsked,
  'the owner agreed to this channel, and the last word was yes': ({ consents, message, nowAt }) => {
    const own = consents.filter(
      one => one.personId === message.personId && (one.channel === message.channel || one.channel === 'all'),
    )
    const yes = own.filter(one => one.what === 'given' && one.at <= nowAt).map(one => one.at)
    const no = own.filter(one => one.what === 'withdrawn').map(one => one.at)
    return yes.length > 0 && (no.length === 0 || Math.max(...yes) > Math.max(...no))
  },
  'nobody asked for silence at the address since': ({ consents, message, nowAt }) => {
    const here = (one: ConsentEntry) => one.address?.toLowerCase() === message.address.toLowerCase()
    const yes = consents.filter(
      one =>
        one.personId === message.personId &&
        one.channel === message.channel &&
        one.what === 'given' &&
        one.at <= nowAt,
    )
    return consents
      .filter(one => one.what === 'withdrawn' && here(one) && [message.channel, 'all'].includes(one.channel))
      .every(no => yes.some(one => one.at > no.at))
  },
  'the car is not sold': ({ soldAt, nowAt }) => soldAt === null || soldAt > nowAt,
  'the visit waits to be booked': ({ visitOpen }) => visitOpen,
  'the address takes mail': ({ bounced }) => bounced.length === 0,
  'it is not one try too many': ({ message, rules }) => message.tryNo <= rules.maxTries,
  'every field is filled': ({ message }) => message.unfilled.length === 0,
  'no header can be smuggled in': ({ message }) => !/[\r\n\u2028]/.test(message.subject),
  'it waited as long as it was told to': ({ message, nowAt }) => (message.notBeforeAt ?? 0) <= nowAt,
  'the owner had some days of peace': ({ message, sends, rules, nowAt, ownerZone }) =>
    sends
      .filter(send => send.personId === message.personId && send.messageId !== message.id)
      .every(send => {
        const peace = Temporal.Instant.fromEpochMilliseconds(send.at * 60_000)
          .toZonedDateTimeISO(ownerZone)
          .add({ days: rules.gapDays })
        return nowAt * 60_000 >= peace.epochMilliseconds
      }),
  'it is a decent hour of an open day for the owner': ({ message, nowAt, ownerZone, rules }) => {
    if (message.channel === 'letter') return true
    const local = Temporal.Instant.fromEpochMilliseconds(nowAt * 60_000).toZonedDateTimeISO(ownerZone)
    const minute = local.hour * 60 + local.minute
    const { fromMin, toMin, closedWeekdays, closedDates } = rules.hours
    return (
      minute >= fromMin &&
      minute < toMin &&
      !closedWeekdays.includes(local.dayOfWeek) &&
      !closedDates.includes(local.toPlainDate().toString())
    )
  },
  'the day has room': ({ message, sends, nowAt, rules, shopZone }) => {
    const date = (at: number) =>
      Temporal.Instant.fromEpochMilliseconds(at * 60_000)
        .toZonedDateTimeISO(shopZone)
        .toPlainDate()
        .toString()
    const today = sends.filter(
      send => send.channel !== 'letter' && send.messageId !== message.id && date(send.at) === date(nowAt),
    )
    return message.channel === 'letter' || today.length < rules.dailyLimit
  },
}

describe('the gate', () => {
  it('opens exactly when every rule holds', () => {
    let opened = 0
    fc.assert(
      fc.property(questions, question => {
        const decision = maySend(question)
        const broken = Object.entries(LAWS).filter(([, holds]) => !holds(question))
        expect(decision.ok, broken.map(([name]) => name).join('; ')).toBe(broken.length === 0)
        if (decision.ok) opened++
        else expect(decision.sentence.length).toBeGreaterThan(10)
      }),
      { numRuns: 5000 },
    )
    expect(opened).toBeGreaterThan(1000)
  })

  it('names a later minute at which it is worth asking again, and by then only rules that passed may hold it', () => {
    fc.assert(
      fc.property(questions, question => {
        const decision = maySend(question)
        if (decision.ok || decision.againAt === null) return
        expect(decision.againAt).toBeGreaterThan(question.nowAt)
        const then = maySend({ ...question, nowAt: decision.againAt })
        if (!then.ok) expect(then.code).not.toBe(decision.code)
      }),
      { numRuns: 3000 },
    )
  })

  const withdrawn = (change: Partial<ConsentEntry>): ConsentEntry => ({
    ...GIVEN,
    what: 'withdrawn',
    at: NOW - DAY,
    source: 'reply',
    wording: 'stop',
    ...change,
  })
  const approved = FREE.message

  it('is open for the message the other cases spoil', () => {
    expect(maySend(FREE)).toEqual({ ok: true })
  })

  it.each<[NoSendCode, string, Partial<SendQuestion>]>([
    ['not-approved', 'a draft', { message: DRAFT }],
    ['not-approved', 'one sent', { message: { ...approved, state: 'sent' } }],
    ['stopped', 'one withdrawn on its way', { message: { ...approved, stopAsked: true } }],
    ['sent-already', 'one the server has', { message: { ...approved, sentAt: NOW - 5 } }],
    ['car-sold', 'a car sold', { soldAt: NOW }],
    ['no-consent', 'no consent', { consents: [] }],
    ['no-consent', 'consent for another channel', { consents: [{ ...GIVEN, channel: 'call' }] }],
    ['no-consent', 'consent of somebody else', { consents: [{ ...GIVEN, personId: 'bob' }] }],
    ['no-consent', 'consent from tomorrow on', { consents: [{ ...GIVEN, at: NOW + DAY }] }],
    ['withdrawn', 'consent withdrawn', { consents: [GIVEN, withdrawn({})] }],
    [
      'withdrawn',
      'every channel withdrawn',
      { consents: [GIVEN, withdrawn({ channel: 'all', address: null })] },
    ],
    ['withdrawn', 'withdrawn this minute', { consents: [GIVEN, withdrawn({ at: NOW })] }],
    [
      'address-withdrawn',
      'the address withdrawn by another',
      { consents: [GIVEN, withdrawn({ personId: 'bob', address: ' ANN@example.com' })] },
    ],
    ['address-bounced', 'an address that bounced', { bounced: ['ann@EXAMPLE.com'] }],
    ['visit-settled', 'a visit booked', { visitOpen: false }],
    ['tries-used', 'a fourth reminder', { message: { ...approved, tryNo: 4 } }],
    ['unfilled', 'a field unfilled', { message: { ...approved, unfilled: ['plate'] } }],
    [
      'header-unsafe',
      'a line end in the subject',
      { message: { ...approved, subject: 'a\nBcc: b@example.com' } },
    ],
    [
      'header-unsafe',
      'a line end in the address',
      { message: { ...approved, address: 'ann@example.com\r\nBcc: b@example.com' } },
    ],
  ])('%s, for good: %s', (code, _, change) => {
    expect(maySend({ ...FREE, ...change })).toMatchObject({ ok: false, code, againAt: null })
  })

  const sent = (at: number, personId = 'bob', channel: 'email' | 'letter' = 'email') => ({
    messageId: `<${at}@x>`,
    personId,
    visitId: 'v',
    channel,
    at,
  })

  it.each<[NoSendCode, string, Partial<SendQuestion>, string]>([
    ['not-yet', 'a deferral', { message: { ...approved, notBeforeAt: NOW + 30 } }, '2026-04-15T15:30Z'],
    [
      'not-yet',
      'a deferral into the night',
      { message: { ...approved, notBeforeAt: utc('2026-04-16T02:00Z') } },
      '2026-04-16T13:00Z',
    ],
    ['too-soon', 'written to three days ago', { sends: [sent(NOW - 3 * DAY, 'ann')] }, '2026-04-17T15:00Z'],
    [
      'daily-limit',
      'three today',
      { sends: [sent(NOW - 1), sent(NOW - 2), sent(NOW - 60)] },
      '2026-04-16T13:00Z',
    ],
    ['quiet', 'before nine', { nowAt: utc('2026-04-15T12:59Z') }, '2026-04-15T13:00Z'],
    [
      'quiet',
      'from eight in the evening, on a Saturday',
      { nowAt: utc('2026-04-19T00:00Z') },
      '2026-04-20T13:00Z',
    ],
    ['quiet', 'an owner further west', { ownerZone: 'Pacific/Honolulu' }, '2026-04-15T19:00Z'],
    ['quiet', 'a closed date', { nowAt: utc('2026-12-25T15:00Z') }, '2026-12-26T14:00Z'],
  ])('%s, until its time: %s', (code, _, change, again) => {
    expect(maySend({ ...FREE, ...change })).toMatchObject({ ok: false, code, againAt: utc(again) })
  })

  it('counts the day by the shop’s own date, on either side of the midnight of UTC', () => {
    // 21:00 on the 15th in New York is 01:00 of the 16th in UTC.
    const hours = { ...FREE.rules.hours, toMin: 24 * 60 }
    const evening = { ...FREE, rules: { ...FREE.rules, hours }, nowAt: utc('2026-04-16T01:00Z') }
    const on = (...times: string[]) => times.map(time => sent(utc(time)))
    const sameDay = on('2026-04-15T22:00Z', '2026-04-15T23:30Z', '2026-04-16T00:30Z')
    expect(maySend({ ...evening, sends: sameDay })).toMatchObject({ ok: false, code: 'daily-limit' })
    // Three after 20:00 of the day before: of the 15th in UTC, of the 14th in New York.
    const before = on('2026-04-15T00:30Z', '2026-04-15T01:30Z', '2026-04-15T03:30Z')
    expect(maySend({ ...FREE, sends: before })).toEqual({ ok: true })
  })

  it('counts letters neither against the day nor by the hour, but asks for consent all the same', () => {
    const letter = { ...approved, channel: 'letter' as const }
    const agreed = [{ ...GIVEN, channel: 'letter' as const }]
    const night = utc('2026-04-15T04:00Z')
    const sends = [sent(NOW - 1), sent(NOW - 2), sent(NOW - 3)]
    expect(maySend({ ...FREE, message: letter, consents: agreed, nowAt: night, sends })).toEqual({ ok: true })
    expect(maySend({ ...FREE, message: letter, nowAt: night })).toMatchObject({
      ok: false,
      code: 'no-consent',
    })
    const letters = [
      sent(NOW - 1, 'bob', 'letter'),
      sent(NOW - 2, 'bob', 'letter'),
      sent(NOW - 3, 'bob', 'letter'),
    ]
    expect(maySend({ ...FREE, sends: letters })).toEqual({ ok: true })
  })

  it('lets a person agree again after a withdrawal', () => {
    const again = { ...GIVEN, at: NOW - 10 }
    expect(maySend({ ...FREE, consents: [GIVEN, withdrawn({}), again] })).toEqual({ ok: true })
    const other = withdrawn({ personId: 'bob' })
    expect(maySend({ ...FREE, consents: [GIVEN, other, again] })).toEqual({ ok: true })
  })
})
