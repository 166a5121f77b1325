export { checkProfile } from './checkProfile.ts'
export { clockMilestones, cureClock } from './clock.ts'
export { type CureClockView, type CureParts, clockView } from './clockView.ts'
export { commonPracticeProfile } from './commonPractice.ts'
export { type CoatWarning, coatConditions } from './conditions.ts'
export { cureCurve } from './degree.ts'
export { dewPointC, leastMarginC, leastPanelC } from './dewPoint.ts'
export type { Heating } from './heating.ts'
export type { LaidCoat, UsualFrom } from './laidCoat.ts'
export { layeredCoat, type WindowVerdict } from './layers.ts'
export { type MilestoneName, milestoneAges, milestoneNames, milestones } from './milestones.ts'
export { type NoticeKind, noticesSince } from './notices.ts'
export {
  type CureProfile,
  type Figure,
  type FigureSource,
  type ForcedCureRow,
  figures,
  type RateRule,
} from './profile.ts'
export { type ColumnMapping, cleanReadings, type RefusedRow, rawReadings } from './readings.ts'
export { type DateOrder, readTime } from './readingTime.ts'
export { ruleOf } from './rules.ts'
export { type Reading, usualGapLimitMin, usualTemperature } from './temperatures.ts'
