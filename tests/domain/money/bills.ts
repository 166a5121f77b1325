import fc from 'fast-check'
import type { Bill } from '../../../main/domain/money/bill.ts'

const tax = fc.constantFrom(
  { percent: '19', category: 'S' as const },
  { percent: '7', category: 'S' as const },
  { percent: '8.875', category: 'S' as const },
  { percent: '0', category: 'Z' as const },
  { percent: '0', category: 'O' as const },
)

/** Bills as a desk may write them: several rates, discounts on lines and on the whole, with tax in the prices or not. */
export const bills: fc.Arbitrary<Bill> = fc
  .record({
    lines: fc.array(
      fc.record({
        quantity: fc.constantFrom('1', '2', '0.5', '3'),
        priceMinor: fc.integer({ min: 0, max: 500_000 }),
        offShare: fc.integer({ min: 0, max: 100 }),
        tax,
      }),
      { minLength: 1, maxLength: 8 },
    ),
    offShare: fc.integer({ min: 0, max: 100 }),
    amounts: fc.constantFrom('net' as const, 'gross' as const),
    taxed: fc.constantFrom('taxed' as const, 'exempt' as const, 'reversed' as const),
  })
  .map(({ lines, offShare, amounts, taxed }) => {
    const made = lines.map(({ offShare, ...line }, i) => {
      const whole = Math.round(Number(line.quantity) * line.priceMinor)
      const off = Math.floor((whole * offShare) / 100)
      return {
        ...line,
        name: `Line ${i}`,
        discounts: off ? [{ amountMinor: off, reason: 'friend' }] : [],
        whole,
        off,
      }
    })
    // An exempt customer's prices may be without a fifth of it: take off less than that would leave.
    const sum = made.reduce((all, line) => all + line.whole - line.off, 0)
    const off = Math.floor((sum * offShare) / (taxed === 'taxed' ? 100 : 200))
    return {
      currency: 'EUR',
      lines: made.map(({ whole: _, off: __, ...line }) => line),
      discounts: off > 0 ? [{ amountMinor: off, reason: 'late' }] : [],
      amounts,
      exemption: taxed === 'exempt' ? 'Resale' : '',
      reversed: taxed === 'reversed',
    }
  })
