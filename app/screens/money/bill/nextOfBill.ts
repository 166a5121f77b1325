import type { BillView } from '../../../../main/api/views.ts'

/** What comes next on a bill: a deposit that was asked for, then the invoice, then its payment. */
export function nextOfBill(
  bill: Pick<BillView, 'invoiceId' | 'depositMinor' | 'paidMinor' | 'toPayMinor'>,
): 'pay' | 'issue' | null {
  if (bill.invoiceId === null) return bill.depositMinor > bill.paidMinor ? 'pay' : 'issue'
  return bill.toPayMinor === 0 ? null : 'pay'
}
