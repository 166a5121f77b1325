export { allocate } from './allocate.ts'
export { type Currency, currencyNamed, minorUnitsOf, payableCurrencies } from './currencies.ts'
export { type DecimalInput, type Rounding, roundTo } from './decimal.ts'
export { splitDeposit } from './deposit.ts'
export {
  type Adjustment,
  type DocumentInput,
  type DocumentLine,
  type DocumentTotals,
  documentTotals,
  lineAmountMinor,
  type RateTotal,
} from './document.ts'
export { formatMoney, readMoney } from './format.ts'
export { checkMinor, majorOf, minorOf, percentOfMinor, sumMinor, timesMinor } from './minor.ts'
export { checkRate, type TaxSplit, taxInGross, taxOfLines, taxOnNet } from './tax.ts'
