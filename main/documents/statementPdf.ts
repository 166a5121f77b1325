import { say } from '../domain/language/index.ts'
import type { Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { drawSummed } from './kit/table.ts'

/** What a customer was billed and paid, as it is printed. */
export interface StatementSheet {
  at: number
  dayWords: string
  paper: Paper
  issuer: Issuer
  to: readonly string[]
  currency: string
  lines: { day: string; words: string; about: string; amount: string; open: string }[]
  open: string
}

/** The statement as a PDF. */
export function statementPdf(statement: StatementSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { at, paper, issuer, to, currency } = statement
  const facts = [[say('Date'), statement.dayWords]] as const
  return makeSheet(
    { title: say('Statement'), at, paper, issuer, reference: say('statement'), to, facts },
    sheet => {
      if (statement.lines.length === 0) sheet.paragraph(say('Nothing was billed yet.'))
      drawSummed(
        sheet,
        [
          { title: say('Day'), width: 'fit' },
          { title: say('What') },
          { title: say('Amount, {currency}', { currency }), width: 'fit', align: 'right' },
          { title: say('Open then'), width: 'fit', align: 'right' },
        ],
        statement.lines.map(({ day, words, about, amount, open }) => [
          day,
          { words, under: about },
          amount,
          open,
        ]),
        [{ name: say('Open||what is owed'), amount: statement.open, strong: true }],
      )
    },
  )
}
