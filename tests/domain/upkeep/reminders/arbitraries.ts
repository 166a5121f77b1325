import fc from 'fast-check'
import { minuteOf } from '../../../../main/domain/calendar/index.ts'
import type { ConsentEntry } from '../../../../main/domain/upkeep/reminders/consent.ts'
import type { SendQuestion, SendRules } from '../../../../main/domain/upkeep/reminders/maySend.ts'
import { newMessage, type OutboxMessage } from '../../../../main/domain/upkeep/reminders/message.ts'

export const utc = (text: string) => minuteOf(Temporal.Instant.from(text))

/** Wednesday 15 April 2026, 11:00 in New York. */
export const NOW = utc('2026-04-15T15:00Z')
export const DAY = 1440

export const RULES: SendRules = {
  hours: { fromMin: 9 * 60, toMin: 20 * 60, closedWeekdays: [7], closedDates: ['2026-12-25'] },
  dailyLimit: 3,
  maxTries: 3,
  gapDays: 5,
}

export const GIVEN: ConsentEntry = {
  personId: 'ann',
  channel: 'email',
  what: 'given',
  at: NOW - 100 * DAY,
  address: 'ann@example.com',
  source: 'intake form',
  wording: 'You may remind me by e-mail.',
}

export const DRAFT: OutboxMessage = newMessage({
  id: '<visit-1.email.1@shop.example>',
  personId: 'ann',
  carId: 'car-1',
  visitId: 'visit-1',
  channel: 'email',
  address: 'ann@example.com',
  tryNo: 1,
  subject: 'protection renewal for your blue coupe',
  body: 'Dear Ann',
  unfilled: [],
})

/** A question whose answer is yes. */
export const FREE: SendQuestion = {
  message: { ...DRAFT, state: 'approved' },
  consents: [GIVEN],
  soldAt: null,
  visitOpen: true,
  sends: [],
  bounced: [],
  rules: RULES,
  ownerZone: 'America/New_York',
  shopZone: 'America/New_York',
  nowAt: NOW,
}

const near = fc.integer({ min: NOW - 20 * DAY, max: NOW + 2 * DAY })
const person = fc.constantFrom('ann', 'bob')
const channel = fc.constantFrom('email', 'letter', 'call', 'text')
const address = fc.constantFrom('ann@example.com', 'Ann@Example.com', 'bob@example.com')

export const consents: fc.Arbitrary<ConsentEntry[]> = fc.array(
  fc.oneof(
    fc.record({
      personId: person,
      channel,
      what: fc.constant('given' as const),
      at: near,
      address,
      source: fc.constant('intake form'),
      wording: fc.constant('You may remind me.'),
    }),
    fc.record({
      personId: person,
      channel: fc.oneof(channel, fc.constant('all' as const)),
      what: fc.constant('withdrawn' as const),
      at: near,
      address: fc.option(address),
      source: fc.constant('reply'),
      wording: fc.constant('Stop'),
    }),
  ),
  { maxLength: 6 },
)

/** Mostly the plain value, now and then one that spoils it. */
function mostly<T>(plain: T, spoiler: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.oneof({ arbitrary: fc.constant(plain), weight: 9 }, { arbitrary: spoiler, weight: 1 })
}

/** Questions of which a good part is answered with yes: everything may spoil one, but few things spoil each. */
export const questions: fc.Arbitrary<SendQuestion> = fc
  .record({
    message: fc.record({
      channel,
      state: mostly<OutboxMessage['state']>(
        'approved',
        fc.constantFrom('draft', 'sent', 'withdrawn', 'failed'),
      ),
      tryNo: mostly(1, fc.integer({ min: 2, max: 5 })),
      subject: mostly('Renewal', fc.constantFrom('Renewal\r\nBcc: all@example.com', 'a\u2028b')),
      unfilled: mostly<readonly string[]>([], fc.constant(['plate'])),
      notBeforeAt: mostly<number | null>(null, near),
      stopAsked: mostly(false, fc.constant(true)),
    }),
    more: mostly<ConsentEntry[]>([], consents),
    soldAt: mostly<number | null>(null, near),
    visitOpen: mostly(true, fc.constant(false)),
    bounced: mostly<readonly string[]>([], fc.constant(['ANN@example.com'])),
    sends: fc.oneof(
      fc.constant([]),
      fc.array(
        fc.record({
          messageId: fc.constantFrom('<m1@x>', '<m2@x>', DRAFT.id),
          personId: fc.constantFrom('ann', 'bob', 'bob'),
          visitId: fc.constant('v'),
          channel,
          at: fc.oneof(near, fc.integer({ min: NOW - 300, max: NOW })),
        }),
        { maxLength: 6 },
      ),
    ),
    ownerZone: fc.constantFrom(
      'America/New_York',
      'America/New_York',
      'Europe/Berlin',
      'Australia/Lord_Howe',
    ),
    nowAt: fc.oneof(
      fc.integer({ min: NOW - 60, max: NOW + 180 }),
      fc.integer({ min: NOW - 3 * DAY, max: NOW + 400 * DAY }),
    ),
  })
  .map(({ message, more, ...rest }) => ({
    ...rest,
    message: { ...DRAFT, ...message },
    consents: [{ ...GIVEN, channel: message.channel }, ...more],
    rules: RULES,
    shopZone: 'America/New_York',
  }))
