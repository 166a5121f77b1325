import type { PaymentMethod } from '../../../main/domain/money/index.ts'

export const methodWords: Readonly<Record<PaymentMethod, string>> = {
  cash: 'Cash',
  card: 'Card',
  transfer: 'Bank transfer',
  other: 'Other',
}

export const paperWords = { invoice: 'Invoice', credit: 'Credit note' } as const
