export { checkProfile } from './checkProfile.ts'
export { clockMilestones } from './clockMilestones.ts'
export { type CureClockView, type CureParts, clockView } from './clockView.ts'
export { advisedByPracticeMin, commonPracticeProfile, leastByPracticeMin } from './commonPractice.ts'
export { type CoatWarning, coatConditions } from './conditions.ts'
export { cureCurve } from './degree.ts'
export { dewPointC, leastMarginC, leastPanelC } from './dewPoint.ts'
export { type AirReading, earlyCureUntil, earlyFlags } from './earlyCure.ts'
export type { Heating } from './heating.ts'
export { coatWindow, type LaidCoat, laidCoat, plannedWindow, type UsualFrom } from './laidCoat.ts'
export { type WindowVerdict, windowVerdict } from './layers.ts'
export { type Leaving, leavingAge } from './leaving.ts'
export { type MilestoneName, milestoneAges, milestoneNames, milestones } from './milestones.ts'
export { type NoticeKind, noticesSince } from './notices.ts'
export { type OutsideUsual, outsideSeasons, reachedOutside, usualOutside } from './outside.ts'
export { type CoatWindow, waitBetween } from './panels.ts'
export {
  type CureProfile,
  type Figure,
  type FigureSource,
  type ForcedCureRow,
  figures,
  type RateRule,
  type TopperFigures,
  type WindowName,
  type WindowRow,
  windowNames,
} from './profile.ts'
export { type ColumnMapping, cleanReadings, type RefusedRow, rawReadings } from './readings.ts'
export { type DateOrder, readTime } from './readingTime.ts'
export { ruleOf } from './rules.ts'
export { type Reading, usualGapLimitMin, usualTemperature } from './temperatures.ts'
