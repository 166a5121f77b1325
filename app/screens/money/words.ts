import { say } from '../../../main/domain/language/index.ts'
import type { PaymentMethod } from '../../../main/domain/money/index.ts'

export const methodWords: Readonly<Record<PaymentMethod, string>> = {
  cash: say('Cash'),
  card: say('Card'),
  transfer: say('Bank transfer'),
  other: say('Other'),
}

export const paperWords = { invoice: say('Invoice'), credit: say('Credit note') } as const
