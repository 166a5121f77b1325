import { expect, test } from 'vitest'
import { nextOfBill } from '../../../../app/screens/money/bill/nextOfBill.ts'

const bill = { invoiceId: null, depositMinor: 0, paidMinor: 0, toPayMinor: 50_000 }

test('a deposit that was asked for comes first, then the invoice, then what is left to pay', () => {
  expect(nextOfBill({ ...bill, depositMinor: 10_000 })).toBe('pay')
  expect(nextOfBill({ ...bill, depositMinor: 10_000, paidMinor: 10_000 })).toBe('issue')
  expect(nextOfBill(bill)).toBe('issue')
  expect(nextOfBill({ ...bill, invoiceId: 'one' })).toBe('pay')
  expect(nextOfBill({ ...bill, invoiceId: 'one', toPayMinor: 0 })).toBeNull()
})
