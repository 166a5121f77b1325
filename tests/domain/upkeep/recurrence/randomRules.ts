import fc from 'fast-check'

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']
const list = (item: fc.Arbitrary<string | number>, most: number) =>
  fc.uniqueArray(item, { minLength: 1, maxLength: most }).map(items => items.join(','))
const bothWays = (most: number) =>
  fc.oneof(fc.integer({ min: 1, max: most }), fc.integer({ min: -most, max: -1 }))
const maybe = (part: fc.Arbitrary<string>) => fc.option(part, { nil: '' })
const weekday = fc.constantFrom(...WEEKDAYS)
const anyOf = (name: string, item: fc.Arbitrary<string | number>, most = 3) =>
  list(item, most).map(items => `;${name}=${items}`)

const interval = (most: number) =>
  fc.integer({ min: 1, max: most }).map(n => (n === 1 ? '' : `;INTERVAL=${n}`))
const months = anyOf('BYMONTH', fc.integer({ min: 1, max: 12 }))
const plainDays = anyOf('BYDAY', weekday)
/** Counted and bare weekdays side by side: a union. */
const mixedDays = anyOf(
  'BYDAY',
  fc.tuple(fc.constantFrom('', '', '1', '2', '3', '4', '5', '-1', '-2'), weekday).map(([n, day]) => n + day),
)
const monthDays = anyOf('BYMONTHDAY', bothWays(31), 4)
const weekStart = maybe(weekday.map(day => `;WKST=${day}`))
const rule = (freq: string, most: number, ...parts: fc.Arbitrary<string>[]) =>
  fc.tuple(interval(most), ...parts).map(texts => `FREQ=${freq}${texts.join('')}`)

/**
 * Rules `ical.js` 2.2 reads as the RFC means them. Left out, because it answers them against the text of section 3.3.10
 * or never: BYSETPOS other than monthly, BYWEEKNO, BYMONTHDAY from the end outside months or beside BYDAY, and
 * BYMONTHDAY of a year without BYMONTH. `everyRule` has them all.
 */
export const icalRule = fc.oneof(
  rule('DAILY', 12, maybe(months), maybe(plainDays)),
  rule('WEEKLY', 12, maybe(months), maybe(plainDays), weekStart),
  rule('MONTHLY', 12, maybe(fc.oneof(monthDays, mixedDays))),
  rule('YEARLY', 4, maybe(months), maybe(mixedDays)),
  rule('YEARLY', 4, anyOf('BYYEARDAY', bothWays(366), 5)),
)

const setPositions = anyOf('BYSETPOS', fc.constantFrom(1, 2, 3, -1, -2), 2)

/** Rules with every part the app takes but COUNT and UNTIL. */
export const everyRule = fc
  .tuple(
    fc.oneof(
      rule('DAILY', 12, maybe(months), maybe(monthDays), maybe(plainDays), weekStart),
      rule('WEEKLY', 12, maybe(months), maybe(plainDays), weekStart),
      rule('MONTHLY', 12, maybe(months), maybe(monthDays), maybe(mixedDays), weekStart),
      rule('YEARLY', 4, maybe(months), maybe(monthDays), maybe(mixedDays), weekStart),
      rule('YEARLY', 4, maybe(months), anyOf('BYYEARDAY', bothWays(366), 5), maybe(mixedDays)),
      rule('YEARLY', 4, maybe(months), anyOf('BYWEEKNO', bothWays(53)), maybe(plainDays)),
    ),
    maybe(setPositions),
  )
  .map(([text, positions]) => (/;BY/.test(text) ? text + positions : text))

export const startDay = fc
  .integer({ min: 0, max: 40 * 365 })
  .map(n => Temporal.PlainDate.from('2000-01-01').add({ days: n }).toString())
