export { allocate } from './allocate.ts'
export { type ChargedLine, chargeBill, type Discount } from './bill.ts'
export { inCoins } from './cash.ts'
export { creditTotals } from './credit.ts'
export { minorUnitsOf, payableCurrencies } from './currencies.ts'
export { splitDeposit } from './deposit.ts'
export { lineAmountMinor, type RateTotal } from './document.ts'
export { type Earned, type EarnedVisit, earnings } from './earns.ts'
export { formatMoney, readMoney } from './format.ts'
export {
  type Account,
  creditPostings,
  invoicePostings,
  type PaymentMethod,
  type Posting,
  paymentMethods,
  paymentPostings,
} from './journal.ts'
export { checkMinor, majorOf, minorOf, percentOfMinor, sumMinor, timesMinor } from './minor.ts'
export {
  type Charge,
  chargesOf,
  type SharedWork,
  saleMinor,
  sharedOnce,
} from './sale.ts'
export { checkRates, type TaxRate, taxCategories } from './tax.ts'
export { moneyWords, plainMoney } from './words.ts'
