export { allocate } from './allocate.ts'
export { minorUnitsOf, payableCurrencies } from './currencies.ts'
export { formatMoney, readMoney } from './format.ts'
export { checkMinor, majorOf, minorOf, sumMinor, timesMinor } from './minor.ts'
