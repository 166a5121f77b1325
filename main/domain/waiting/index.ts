export { type BaySpan, fitOf, gapUse, type WishedTimes } from './fit.ts'
export { freedOf, type StepPlaced, staysThrough } from './freed.ts'
