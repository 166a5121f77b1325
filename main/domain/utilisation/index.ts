export { type BayVisit, bayTime, type TimeUsed } from './bayTime.ts'
export { treatmentCosts } from './treatmentCosts.ts'
