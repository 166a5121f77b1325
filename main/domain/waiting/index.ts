export { type BaySpan, fitOf, gapUse, type WishedTimes } from './fit.ts'
