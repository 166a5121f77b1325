import type { InvoiceSheet } from '../../main/documents/invoicePdf.ts'

const issuer = { name: 'Ashdown Paint Care', lines: ['12 Mill Lane'], logo: null, colour: '#31456b' }
/** An invoice of so many lines as it is printed. */
export const anInvoiceSheet = (lines: number, more: Partial<InvoiceSheet> = {}): InvoiceSheet => ({
  title: 'Invoice INV-0042',
  reference: 'invoice INV-0042',
  at: 29_604_000,
  paper: 'A4',
  issuer,
  to: ['Ines Vale', '4 Quarry Row'],
  facts: [['Pay by', 'Wed 29 April 2026']],
  lines: Array.from({ length: lines }, (_, i) => ({
    name: `Line no ${i + 1}.`,
    under: i === 0 ? '20.00 off: Second car' : '',
    quantity: '1',
    price: '120.00',
    rate: '8.25 %',
    amount: '100.00',
  })),
  totals: [
    { name: 'Sales tax 8.25 % on 100.00', amount: '8.25' },
    { name: 'Total', amount: '108.25', strong: true },
  ],
  currency: 'USD',
  words: [{ heading: 'How to pay', text: 'To the account 4411.' }],
  xml: null,
  ...more,
})
