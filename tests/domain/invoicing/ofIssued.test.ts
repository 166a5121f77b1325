import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { brokenRules, electronicOf } from '../../../main/domain/invoicing/index.ts'
import type { Issued } from '../../../main/domain/invoicing/ofIssued.ts'
import { chargeBill, creditTotals, sumMinor } from '../../../main/domain/money/index.ts'
import { bills } from '../money/bills.ts'

const party = {
  name: 'Ashdown Paint Care',
  address: ' 4 Quarry Lane\r\n\n10001 Ashdown ',
  country: 'DE',
  email: 'desk@example.com',
  taxNumber: 'DE 000 000 000',
}
const paper = {
  kind: 'invoice' as const,
  name: 'INV-0042',
  issuedOn: '2026-04-15',
  dueOn: '2026-04-29',
  suppliedOn: '2026-04-14',
  currency: 'EUR',
  seller: { ...party, payTo: 'By transfer' },
  buyer: { ...party, name: 'Ines Vale', country: 'NL', taxNumber: 'NL000000000B01' },
  corrects: null,
  carWords: 'Marlo Wendrel (DM 4711)',
  note: 'Thank you.',
  reason: '',
}

/** What is kept of a bill that was charged. */
function issuedOf(bill: Parameters<typeof chargeBill>[0]): Issued {
  const { lines, totals } = chargeBill(bill)
  return {
    ...paper,
    exemption: bill.exemption,
    allowanceReason: bill.discounts.map(each => each.reason).join('; '),
    lines: lines.map(line => ({ ...line, quantity: String(line.quantity) })),
    taxPerRate: totals.taxPerRate.map(rate => ({ ...rate, name: 'Tax' })),
    withoutTaxMinor: totals.withoutTaxMinor,
    taxMinor: totals.taxMinor,
    withTaxMinor: totals.withTaxMinor,
    depositMinor: 0,
    carriedMinor: 0,
  }
}

const twoRates = {
  currency: 'EUR',
  amounts: 'net' as const,
  exemption: '',
  reversed: false,
  lines: [
    {
      name: 'Coating',
      quantity: '1',
      priceMinor: 100_000,
      discounts: [],
      tax: { percent: '19', category: 'S' as const },
    },
    {
      name: 'Book',
      quantity: '2',
      priceMinor: 1_000,
      discounts: [],
      tax: { percent: '7', category: 'S' as const },
    },
  ],
  discounts: [{ amountMinor: 10_200, reason: 'Regular customer' }],
}

describe('the electronic form of what was issued', () => {
  it('carries every term, with what is off the whole a rate and the deposit as paid', () => {
    // By hand: 102.00 off 1,020.00 is a tenth of each line: 100.00 at 19 %, 2.00 at 7 %.
    const terms = electronicOf({ ...issuedOf(twoRates), depositMinor: 20_000 })
    expect(terms).toMatchObject({
      type: '380',
      number: 'INV-0042',
      dueOn: '2026-04-29',
      suppliedOn: '2026-04-14',
      note: 'Marlo Wendrel (DM 4711)\nThank you.',
      payTo: 'By transfer',
      exemption: '',
      seller: { address: ['4 Quarry Lane', '10001 Ashdown'], taxNumber: 'DE000000000' },
      buyer: { name: 'Ines Vale', taxNumber: 'NL000000000B01' },
      allowances: [
        { amountMinor: 10_000, reason: 'Regular customer', category: 'S', ratePercent: '19' },
        { amountMinor: 200, reason: 'Regular customer', category: 'S', ratePercent: '7' },
      ],
      sumOfLinesMinor: 102_000,
      allowancesMinor: 10_200,
      withoutTaxMinor: 91_800,
      // 900.00 at 19 % and 18.00 at 7 %.
      taxMinor: 17_226,
      withTaxMinor: 109_026,
      paidMinor: 20_000,
      dueMinor: 89_026,
    })
    expect(terms.lines.map(({ id, name, quantity }) => [id, name, quantity])).toEqual([
      ['1', 'Coating', '1'],
      ['2', 'Book', '2'],
    ])
    expect(brokenRules(terms)).toEqual([])
  })

  it('says why nothing is taxed: the reason given, else what the rate is called; and leaves out a line of nothing', () => {
    const outside = { percent: '0', category: 'O' as const }
    const lines = twoRates.lines.map(line => ({ ...line, tax: outside }))
    const issued = issuedOf({ ...twoRates, lines, discounts: [] })
    expect(electronicOf(issued).exemption).toBe('Tax')
    expect(electronicOf({ ...issued, exemption: 'Resale' }).exemption).toBe('Resale')
    const none = { ...issued.lines[1]!, quantity: '0', netMinor: 0 }
    expect(electronicOf({ ...issued, lines: [issued.lines[0]!, none] }).lines).toHaveLength(1)
  })

  it('a credit note names what it corrects and why, and asks for no payment', () => {
    const corrects = { name: 'INV-0042', issuedOn: '2026-04-15' }
    const terms = electronicOf({ ...issuedOf(twoRates), kind: 'credit', corrects, reason: 'Not done' })
    expect(terms).toMatchObject({ type: '381', corrects: { number: 'INV-0042' }, payTo: '' })
    expect(terms.note).toContain('Not done')
  })

  it('law: whatever was charged, its sums keep the rules, and so do those of its credit notes', () => {
    const mixes = (issued: Issued) => new Set(issued.taxPerRate.map(rate => rate.category === 'O')).size > 1
    fc.assert(
      fc.property(
        bills,
        fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 8, maxLength: 8 }),
        (bill, shares) => {
          const issued = issuedOf(bill)
          const broken = (of: Issued) =>
            brokenRules(electronicOf(of)).filter(({ rule }) => rule !== 'BR-O-11' || !mixes(of))
          expect(broken(issued)).toEqual([])
          const { lines } = chargeBill(bill)
          const given = lines.map((line, i) =>
            Math.floor(((line.amountMinor - line.allowanceMinor) * shares[i]!) / 100),
          )
          if (sumMinor(given) === 0) return
          const totals = creditTotals(
            lines,
            lines.map(() => 0),
            given,
            bill.amounts,
          )
          const note: Issued = {
            ...issued,
            kind: 'credit',
            corrects: { name: 'INV-0042', issuedOn: '2026-04-15' },
            allowanceReason: '',
            ...totals,
            taxPerRate: totals.taxPerRate.map(rate => ({ ...rate, name: 'Tax' })),
            lines: lines.flatMap((line, i) =>
              given[i] === 0 ? [] : [{ ...line, quantity: '1', netMinor: totals.netsMinor[i]! }],
            ),
          }
          expect(broken(note)).toEqual([])
        },
      ),
    )
  })
})
