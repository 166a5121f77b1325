// RFC 5545 section 3.3.10; the limits are ours.
import { expect, it } from 'vitest'
import { ruleParts } from '../../../../main/domain/upkeep/recurrence/ruleParts.ts'

it.each([
  ['', 'NAME=VALUE'],
  ['INTERVAL=2', 'FREQ is missing'],
  ['FREQ=FORTNIGHTLY', 'is none of'],
  ['FREQ=toString', 'is none of'],
  ['FREQ=DAILY;INTERVAL=0', 'whole number'],
  ['FREQ=DAILY;COUNT=2;UNTIL=20261231', 'exclude'],
  ['FREQ=DAILY;COUNT=2;COUNT=3', 'twice'],
  ['FREQ=DAILY;BYMOON=1', 'no part of a rule'],
  ['FREQ=MONTHLY;BYMONTHDAY=32', '1 to 31'],
  ['FREQ=MONTHLY;BYMONTHDAY=0', '1 to 31'],
  ['FREQ=YEARLY;BYMONTH=-1', '1 to 12'],
  ['FREQ=WEEKLY;BYDAY=XX', 'no weekday'],
  ['FREQ=WEEKLY;BYDAY=1MO', 'MONTHLY or YEARLY'],
  ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=1MO', 'BYWEEKNO'],
  ['FREQ=WEEKLY;BYMONTHDAY=3', 'WEEKLY'],
  ['FREQ=MONTHLY;BYYEARDAY=3', 'BYYEARDAY'],
  ['FREQ=MONTHLY;BYWEEKNO=3', 'FREQ=YEARLY'],
  ['FREQ=MONTHLY;BYSETPOS=1', 'another BY part'],
  ['FREQ=DAILY;UNTIL=tomorrow', 'neither'],
  ['FREQ=DAILY;WKST=Monday', 'WKST'],
  ['FREQ=DAILY;INTERVAL=7306', '1 to 7305'],
  ['FREQ=WEEKLY;INTERVAL=1044', '1 to 1043'],
  ['FREQ=MONTHLY;INTERVAL=241', '1 to 240'],
  ['FREQ=YEARLY;INTERVAL=9000', '1 to 20'],
  ['FREQ=DAILY;COUNT=1001', '1 to 1000'],
])('refuses the rule "%s"', (rule, words) => {
  const attempt = () => ruleParts(rule)
  expect(attempt).toThrow(expect.objectContaining({ code: 'rule-bad', field: 'rule' }))
  expect(attempt).toThrow(words)
})

it.each([
  'FREQ=HOURLY',
  'FREQ=MINUTELY',
  'FREQ=SECONDLY',
  'FREQ=DAILY;BYHOUR=9,17',
  'FREQ=DAILY;BYMINUTE=0',
  'FREQ=DAILY;BYSECOND=0',
])('refuses %s, which repeats within a day', rule => {
  expect(() => ruleParts(rule)).toThrow(expect.objectContaining({ code: 'rule-too-fine', field: 'rule' }))
})

it.each([
  'FREQ=DAILY;INTERVAL=7305',
  'FREQ=WEEKLY;INTERVAL=1043;WKST=SU',
  'FREQ=MONTHLY;INTERVAL=240;BYMONTHDAY=-31',
  'FREQ=YEARLY;INTERVAL=20;COUNT=1000',
  'FREQ=YEARLY;BYDAY=-53MO,53SU;BYSETPOS=-366',
])('takes %s', rule => {
  expect(ruleParts(rule).parts.size).toBe(rule.split(';').length)
})
