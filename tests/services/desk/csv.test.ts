// RFC 4180: cells with a comma, a quote or a line end stand in quotes, a quote within is doubled, lines end with CRLF.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { byteOrderMark, csvText, readCsv } from '../../../main/services/desk/csv.ts'

test('rows are written as the RFC has them, each with its line end', () => {
  expect(
    csvText([
      ['a', 'b c'],
      ['1,5', 'say "x"'],
      ['two\nlines', ''],
    ]),
  ).toBe('a,b c\r\n"1,5","say ""x"""\r\n"two\nlines",\r\n')
  expect(csvText([])).toBe('')
})

test('what was written is read back, with the mark of a spreadsheet before it too', () => {
  const cell = fc.stringMatching(/^[a-z0-9 ,"\n]{0,8}$/)
  const rows = fc.array(fc.tuple(fc.constantFrom('a', 'b'), cell, cell), { minLength: 1, maxLength: 6 })
  fc.assert(
    fc.property(rows, list => {
      expect(readCsv(byteOrderMark + csvText(list), 100).slice(0, list.length)).toEqual(list)
    }),
  )
})

test('other signs between the cells are found out, and no more rows are read than asked for', () => {
  for (const sign of [';', '\t', '|'])
    expect(readCsv(`${['plate', 'make'].join(sign)}\n${['KFR 204', 'Marlo'].join(sign)}`, 10)).toEqual([
      ['plate', 'make'],
      ['KFR 204', 'Marlo'],
    ])
  expect(readCsv('a,b\n1,2\n3,4', 2)).toHaveLength(2)
})
