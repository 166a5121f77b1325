export { checkProfile } from './checkProfile.ts'
export {
  type ClockMilestones,
  type CureClock,
  clockMilestones,
  cureClock,
  type Parts,
  type Reached,
} from './clock.ts'
export { advisedByPracticeMin, allFrom, commonPracticeProfile, leastByPracticeMin } from './commonPractice.ts'
export {
  type BayConditions,
  type CoatConditions,
  type CoatWarning,
  coatConditions,
  type WarningCode,
} from './conditions.ts'
export { ageAtDegree, type Band, type CureCurve, cureCurve, degreeAt } from './degree.ts'
export { dewPointC, leastMarginC, leastPanelC } from './dewPoint.ts'
export type { Heating } from './heating.ts'
export {
  type LaidCoat,
  type LayeredCoat,
  layeredCoat,
  type RecoatFinding,
  type WindowVerdict,
} from './layers.ts'
export {
  type MilestoneAges,
  type MilestoneName,
  type Milestones,
  milestoneAges,
  milestoneNames,
  milestones,
} from './milestones.ts'
export {
  closingSoonMin,
  type Notice,
  type NoticeKind,
  noticesSince,
} from './notices.ts'
export {
  type CureProfile,
  type Figure,
  type FigureSource,
  type ForcedCureRow,
  figures,
  type RateRule,
} from './profile.ts'
export {
  type BayReading,
  type ColumnMapping,
  cleanReadings,
  curingReadings,
  type RawReading,
  type ReadingFormat,
  type ReadingsReport,
  type RefusedRow,
  rawReadings,
} from './readings.ts'
export { type DateOrder, readTime } from './readingTime.ts'
export { type MilestoneRule, ruleOf } from './rules.ts'
export type { Part } from './stretches.ts'
export { type BayTemperatures, type Reading, usualGapLimitMin, usualTemperature } from './temperatures.ts'
