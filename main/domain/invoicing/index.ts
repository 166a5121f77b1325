export { ciiOf } from './cii.ts'
export type { ElectronicInvoice, Party } from './invoice.ts'
export { brokenRules, type RuleBroken } from './rules.ts'
export { ublOf } from './ubl.ts'
