// RFC 4180 sections 2 and 7 rules; formula cells by OWASP, CSV injection. Read back by papaparse, another's reader.
import fc from 'fast-check'
import Papa from 'papaparse'
import { expect, it } from 'vitest'
import { asWritten, defused } from '../../../main/domain/tables/index.ts'
import { byteOrderMark, csvText, readCsv } from '../../../main/services/desk/csv.ts'
import { type Case, runCases } from '../../reference/cases.ts'

const firstSet = [
  [/^csv-/, 'csv-read'],
  [/^formula-/, 'formula'],
  [/./, 'elsewhere'],
] as const

const read = (text: string) => Papa.parse<string[]>(text.replace(/\r\n$|\n$/, '')).data
const ours = (text: string) => readCsv(text.replace(/\r\n$|\n$/, ''), 1_000)

runCases('communications', firstSet, {
  'csv-read': (entry: Case<{ text: string }, { rows: string[][] }>) => {
    expect(ours(entry.input.text)).toEqual(entry.expected.rows)
    expect(read(csvText(entry.expected.rows))).toEqual(entry.expected.rows)
  },

  'csv-write': (entry: Case<{ rows: string[][] }, { text: string }>) => {
    expect(csvText(entry.input.rows)).toBe(entry.expected.text)
  },

  formula: (entry: Case<{ cell: string }, { mustNotRunAsFormula: true; readsBackAs: string }>) => {
    const [[cell = ''] = []] = read(csvText([[defused(entry.input.cell), 'b']]))
    expect(/^[=+\-@\t\r]/.test(cell)).toBe(!entry.expected.mustNotRunAsFormula)
    expect(cell).toMatch(/^'/)
    expect(asWritten(cell)).toBe(entry.expected.readsBackAs)
  },
})

it('every field survives quotes, newlines, emoji and right-to-left text', () => {
  const hard = fc.constantFrom(
    '"',
    '""',
    '\r\n',
    '\n',
    '\r',
    ',',
    ';',
    '👩‍🔧',
    'שלום',
    '‏مرحبا',
    '\u202e',
    ' ',
    "'",
    '=',
    '\t',
  )
  const field = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.array(hard).map(parts => parts.join('')),
  )
  const rows = fc.array(fc.array(field, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 })
  fc.assert(
    fc.property(rows, rows => {
      const text = byteOrderMark + csvText([['a', 'b', 'c'], ...rows.map(row => row.map(defused))])
      const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' })
      expect(errors).toEqual([])
      expect(data.slice(0, -1).map(row => row.map(asWritten))).toEqual([['a', 'b', 'c'], ...rows])
    }),
    { numRuns: 500 },
  )
})
