import type { ElectronicInvoice } from '../../../main/domain/invoicing/index.ts'

/**
 * Two coatings and a mitt at 19 %, 3 pieces for 10.00 that do not come out even, and 50.00 off the whole. Worked by hand:
 * lines 1,000.00 + 10.00 = 1,010.00; less 50.00 is 960.00; 19 % of it is 182.40; together 1,142.40; paid 200.00.
 */
export const anInvoice: ElectronicInvoice = {
  type: '380',
  number: 'INV-0042',
  issuedOn: '2026-04-15',
  dueOn: '2026-04-29',
  suppliedOn: '2026-04-14',
  currency: 'EUR',
  seller: {
    name: 'Ashdown Paint Care & Sons',
    address: ['4 Quarry Lane', '10001 Ashdown'],
    country: 'DE',
    taxNumber: 'DE000000000',
    email: 'desk@example.com',
  },
  buyer: { name: 'Łucja <Birk>', address: ['12 Larch Row'], country: 'DE', taxNumber: '', email: '' },
  corrects: null,
  note: 'Thank you.',
  payTo: 'By transfer to the account on file.',
  exemption: '',
  lines: [
    {
      id: '1',
      name: 'Coating, two layers',
      quantity: '1',
      netMinor: 100_000,
      category: 'S',
      ratePercent: '19',
    },
    { id: '2', name: 'Wash mitts', quantity: '3', netMinor: 1000, category: 'S', ratePercent: '19' },
  ],
  allowances: [{ amountMinor: 5000, reason: 'Regular customer', category: 'S', ratePercent: '19' }],
  taxes: [{ category: 'S', ratePercent: '19', baseMinor: 96_000, taxMinor: 18_240 }],
  sumOfLinesMinor: 101_000,
  allowancesMinor: 5000,
  withoutTaxMinor: 96_000,
  taxMinor: 18_240,
  withTaxMinor: 114_240,
  paidMinor: 20_000,
  dueMinor: 94_240,
}
