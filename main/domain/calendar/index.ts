export { type ClockChange, clockChanges, clockChangesOfYear } from './clockChanges.ts'
export { closingFrom } from './closing.ts'
export {
  addMonths,
  type CivilDate,
  civilDate,
  dateOfDay,
  dayNumber,
  dayNumberOf,
  daysInMonth,
  weekdayOf,
} from './dayNumber.ts'
export { type Day, dayLength, daysBetween, type IsoWeek, isoWeek, weeksInIsoYear } from './days.ts'
export {
  dayWords,
  monthNames,
  weekdayDate,
  weekdayName,
  weekdayNames,
  weekdayWillDo,
} from './dayWords.ts'
export { onGrid } from './grid.ts'
export {
  checkCalendar,
  checkClosures,
  checkWeekly,
  type HoursException,
  type OpeningHours,
  type ShopCalendar,
  type WallSpan,
  wallWords,
} from './hours.ts'
export {
  addDays,
  addElapsed,
  atWall,
  checkDate,
  checkZone,
  dateOf,
  instantOf,
  minuteOf,
  startOfDay,
  wallMinuteOf,
  wallMinutesBetween,
  zonedOf,
} from './instants.ts'
export { type CrewHours, crewSpans, openSpans } from './openSpans.ts'
export { firstIndex } from './search.ts'
export {
  clip,
  difference,
  indexFrom,
  intersection,
  minutesIn,
  type Span,
  spanAt,
  spanSet,
  union,
} from './spans.ts'
export { endOfWork, firstOpenAt, openMinutesBetween } from './work.ts'
