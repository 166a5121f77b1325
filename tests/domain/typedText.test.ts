// What people, files and mails write, however long, is read in time that grows with its length.
import { describe, expect, it } from 'vitest'
import { cleanReadings } from '../../main/domain/cure/readings.ts'
import { readUnNumber } from '../../main/domain/hazard/index.ts'
import { readRatio } from '../../main/domain/measure/dilution.ts'
import { readDecimal } from '../../main/domain/money/decimal.ts'
import { ruleParts } from '../../main/domain/upkeep/recurrence/ruleParts.ts'
import { checkWords } from '../../main/domain/upkeep/reminders/template.ts'
import { checkVin, parsePhone, readPlate } from '../../main/domain/vehicle/index.ts'
import { checkMailAddress } from '../../main/domain/vehicle/mailAddress.ts'
import { growth, IN_PROPORTION } from './growth.ts'

const format = { zone: 'UTC', dateOrder: 'ymd', unit: 'C', latestAt: 0 } as const

const readers: Record<string, (text: string) => unknown> = {
  plate: text => readPlate(text),
  'identification number': text => checkVin(text),
  'mail address': text => checkMailAddress(text),
  phone: text => parsePhone(text, 'US'),
  'UN number': text => readUnNumber(text),
  ratio: text => readRatio(text),
  decimal: text => readDecimal(text, 'amount'),
  rule: text => ruleParts(text),
  template: text => checkWords({ subject: 'Hello', body: text }, 'words'),
  'log time': text => cleanReadings([{ row: 1, time: text, air: '20' }], format),
  'log value': text => cleanReadings([{ row: 1, time: '1969-12-31 10:00', air: text }], format),
}

const fill =
  (head: string, each: string, tail = '') =>
  (size: number) =>
    head + each.repeat(size / each.length) + tail

const shapes: [string, (size: number) => string][] = [
  ['blanks', fill('', ' ', 'x')],
  ['a figure and blanks', fill('1', ' ', 'x')],
  ['open braces', fill('', '{')],
  ['a brace and blanks', fill('{{', ' ')],
  ['hyphens', fill('a', '-', 'a!')],
  ['dots', fill('a@b', '.', '!')],
  ['at signs', fill('', 'a@')],
  ['brackets', fill('', '<')],
  ['figures', fill('', '1', 'x')],
  ['parts of a rule', fill('FREQ=MONTHLY;BYDAY=', '1MO,')],
  ['figures and colons', fill('', '1:')],
]

describe.each(Object.entries(readers))('a %s', (_, read) => {
  it.each(shapes)('made of %s', (_, shape) => {
    const tried = (text: string) => {
      try {
        read(text)
      } catch {
        // Refused is as good as read: what counts is how long it took.
      }
    }
    expect(growth(tried, shape, 2048)).toBeLessThan(IN_PROPORTION)
  })
})
