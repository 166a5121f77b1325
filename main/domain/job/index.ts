export { type Added, addedWords, addedWork, missedOf, type WaitingStep } from './missed.ts'
export { can, isCalledOff, isOver, type JobAct, type JobStatus, statusAt } from './status.ts'
export { isMovableFrom, lastActual, lastRecorded, notYet } from './steps.ts'
export {
  type CorrectionStep,
  correctionAfter,
  correctionOf,
  priceAfter,
  type SpotFigures,
  spotCautions,
  spotPriceWeight,
} from './testSpot.ts'
