export { meetsBay } from './bayFree.ts'
export { type BlockStep, type BlockView, filledStays, stateOf } from './blocks.ts'
export { assertFits, stepRows, timesOf } from './bookedPlan.ts'
export { cautionLines, cautionWords, cureWords } from './cautions.ts'
export { clockedSteps } from './clockedSteps.ts'
export { type Conflict, conflictsOn } from './conflicts.ts'
export {
  type CoatStep,
  type CureMarks,
  type CuringProduct,
  coatOfHold,
  coatsOf,
  leavingTimes,
  marksOf,
  type ProductsById,
  profilesIn,
  stillOn,
} from './cureMarks.ts'
export type { Booked } from './floor.ts'
export {
  crewRows,
  type FloorJob,
  type FloorRow,
  type FloorStep,
  floorJobs,
  jobStays,
  leavingOf,
  peopleOf,
  planOf,
  presenceOf,
  stepOf,
  teamOf,
} from './floorJobs.ts'
export { problemOf } from './floorProblem.ts'
export { projectFloor, projectJob } from './floorProjection.ts'
export { lastHoldMin } from './lastHold.ts'
export { type JobLayerView, layerViews } from './layerViews.ts'
export { type NextThingView, nextThing } from './nextThing.ts'
export { type Named, wordsFor } from './shopWords.ts'
export { isAmiss, standingWords } from './standingWords.ts'
export { takenFor } from './takenFor.ts'
export { type Judged, judge, type Verdict } from './verdicts.ts'
