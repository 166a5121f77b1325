export { minutesWithout } from './leaveOut.ts'
export { type Added, addedWords, addedWork, missedOf, type WaitingStep } from './missed.ts'
export { can, isCalledOff, isOver, type JobAct, type JobStatus, statusAfter, statusAt } from './status.ts'
export { isMovableFrom, lastActual, lastRecorded, notYet } from './steps.ts'
export {
  correctionAfter,
  correctionOf,
  priceAfter,
  spotCautions,
  spotPriceWeight,
} from './testSpot.ts'
export { hasMovedSince, type SaidTimes, type ToldKind, timesSaid, toldKinds } from './told.ts'
