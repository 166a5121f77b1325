import { expect, it } from 'vitest'
import { ruleWords } from '../../../../main/domain/upkeep/recurrence/ruleWords.ts'

it.each([
  ['FREQ=DAILY;INTERVAL=183', 'every 183 days'],
  ['FREQ=MONTHLY;INTERVAL=6', 'every 6 months'],
  ['FREQ=YEARLY', 'every year'],
  ['FREQ=DAILY;COUNT=1', 'once'],
  ['FREQ=MONTHLY;COUNT=4', 'every month, 4 times'],
  ['FREQ=YEARLY;BYMONTH=10;BYDAY=-1FR', 'every year in October on the last Friday'],
  ['FREQ=YEARLY;BYMONTH=3,4,10', 'every year in March, April and October'],
  ['FREQ=WEEKLY;INTERVAL=26;BYDAY=MO,WE', 'every 26 weeks on Monday and Wednesday'],
  ['FREQ=MONTHLY;BYDAY=1MO', 'every month on the 1st Monday'],
  ['FREQ=MONTHLY;BYMONTHDAY=2,11,23', 'every month on the 2nd, the 11th and the 23rd'],
  ['FREQ=MONTHLY;BYMONTHDAY=-1', 'every month on the last day'],
  ['FREQ=MONTHLY;BYMONTHDAY=-3', 'every month on the 3rd last day'],
  ['FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', 'every month on Friday that is the 13th'],
  ['FREQ=YEARLY;UNTIL=20301231T080000Z', 'every year until 31 December 2030'],
  [
    'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1',
    'by the rule FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1',
  ],
  // Kept from before a limit was set.
  ['FREQ=HOURLY', 'by the rule FREQ=HOURLY'],
  ['FREQ=YEARLY;INTERVAL=9000', 'by the rule FREQ=YEARLY;INTERVAL=9000'],
])('%s is "%s"', (rule, words) => {
  expect(ruleWords(rule)).toBe(words)
})
