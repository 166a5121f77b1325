import fc from 'fast-check'
import { expect, it } from 'vitest'
import { asWritten, defused } from '../../../main/domain/tables/index.ts'

/** What a spreadsheet takes for a formula, by OWASP's "CSV injection" (from memory), spaces before it passed over. */
const runsAsFormula = (cell: string) => /^\s*[=+\-@\t\r＝＋－＠]/.test(cell)

it.each(['=1', '+1', '-1', '@a', '\t=1', '\r=1', ' =1', '＝1', '＠a', '=cmd|" /C calc"!A0'])(
  '%j is made text',
  cell => {
    expect(defused(cell)).toBe(`'${cell}`)
    expect(asWritten(defused(cell))).toBe(cell)
  },
)

it.each(['Edda', 'a=1', '12 - 3', "'t Veld", "''", '', '(212) 555-0177'])('%j stays as it is', cell => {
  expect(defused(cell)).toBe(cell)
  expect(asWritten(cell)).toBe(cell)
})

it('never leaves a formula, and gives back every text, one with apostrophes of its own too', () => {
  const cell = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.string({ unit: fc.constantFrom("'", '=', '-', '+', '@', ' ', '\t', '\n', 'a', '＝') }),
  )
  fc.assert(
    fc.property(cell, text => {
      expect(runsAsFormula(defused(text))).toBe(false)
      expect(asWritten(defused(text))).toBe(text)
    }),
    { numRuns: 2_000 },
  )
})
