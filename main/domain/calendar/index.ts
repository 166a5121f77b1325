export { clockWords, hourWords, wallWords } from './clockWords.ts'
export { closingFrom } from './closing.ts'
export { dateText, inShopYears, readDate, readShortDate, shopYears } from './dateText.ts'
export { addMonths, civilDate, dateOfDay, dayNumber, dayNumberOf, weekdayOf } from './dayNumber.ts'
export { dayLength, daysBetween } from './days.ts'
export {
  dayWords,
  longDayWords,
  monthNames,
  weekdayDate,
  weekdayName,
  weekdayNames,
  weekdayShort,
  weekdayWillDo,
} from './dayWords.ts'
export { type Grid, gridDown, gridUp } from './grid.ts'
export {
  checkCalendar,
  checkClosures,
  checkWeekly,
  type HoursException,
  type OpeningHours,
  type ShopCalendar,
  type WallSpan,
} from './hours.ts'
export {
  addDays,
  atWall,
  checkDate,
  checkZone,
  dateOf,
  minuteOf,
  startOfDay,
  wallMinuteOf,
  zonedOf,
} from './instants.ts'
export { datedWords, durationWords, minuteWords, momentWords } from './minuteWords.ts'
export { crewSpans, openSpans } from './openSpans.ts'
export { firstIndex } from './search.ts'
export { clip, difference, indexFrom, intersection, minutesIn, type Span, spanSet } from './spans.ts'
export { weekNumber, weekStart } from './weeks.ts'
export { firstOpenAt, openMinutesBetween } from './work.ts'
