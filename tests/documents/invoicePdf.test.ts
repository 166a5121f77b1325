import { expect, it } from 'vitest'
import { invoicePdf } from '../../main/documents/invoicePdf.ts'
import { statementPdf } from '../../main/documents/statementPdf.ts'
import { anInvoiceSheet } from './anInvoiceSheet.ts'
import { readPdf } from './readPdf.ts'

const sheet = anInvoiceSheet
const { issuer } = sheet(0)

it('reads as it was written', async () => {
  const { title, pages } = await readPdf(await invoicePdf(sheet(1)))
  expect(title).toBe('Invoice INV-0042')
  const words = pages[0]!.lines.join('\n')
  for (const fact of [
    /Ines Vale/,
    /Pay by\s+Wed 29 April 2026/,
    /20\.00 off: Second car/,
    /Sales tax 8\.25 % on 100\.00\s+8\.25/,
    /Total\s+108\.25/,
    /To the account 4411\./,
    /Ashdown Paint Care · invoice INV-0042/,
  ])
    expect(words).toMatch(fact)
})

it('takes forty lines, long names and names of other scripts over its pages without losing one', async () => {
  const to = ['陈晓明', 'שירה לוי', `A ${'very '.repeat(30)}long name`]
  const { pages } = await readPdf(await invoicePdf(sheet(90, { to })))
  expect(pages.length).toBeGreaterThanOrEqual(3)
  const all = pages.flatMap(page => page.lines).join('\n')
  for (let i = 1; i <= 90; i++) expect(all).toContain(`Line no ${i}.`)
  expect(all).toContain('陈晓明')
  expect(all).toMatch(/Total\s+108\.25/)
})

it('a statement says what was open after each line', async () => {
  const lines = [
    {
      day: 'Wed 15 April 2026',
      words: 'Invoice INV-0042',
      about: 'KFR 204',
      amount: '108.25',
      open: '108.25',
    },
    { day: 'Thu 16 April 2026', words: 'Payment', about: 'cash, job 7', amount: '-50.00', open: '58.25' },
  ]
  const { title, pages } = await readPdf(
    await statementPdf({
      at: 29_604_000,
      dayWords: 'Fri 17 April 2026',
      paper: 'LETTER',
      issuer,
      to: ['Ines Vale'],
      currency: 'USD',
      lines,
      open: '58.25',
    }),
  )
  expect(title).toBe('Statement')
  const words = pages[0]!.lines.join('\n')
  expect(words).toMatch(/Payment\s+-50\.00\s+58\.25/)
  expect(words).toMatch(/Open\s+58\.25/)
})
