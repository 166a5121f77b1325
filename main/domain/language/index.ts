export {
  clockHoursNow,
  dateLocaleNow,
  dateOrderNow,
  type Formats,
  usualFormats,
  weekBeginsNow,
  weekdaysNow,
  writtenIn,
} from './formats.ts'
export { sayKept } from './kept.ts'
export { type Language, languageNow, languages, speakAs } from './languages.ts'
export { decimalMark, decimalNow, localeNow } from './locale.ts'
export {
  type Catalogue,
  messageIn,
  say,
  teach,
  textIn,
  word,
} from './say.ts'
export {
  type ClockHours,
  clockHours,
  type DateOrder,
  dateOrders,
  standIn,
  unitsNow,
  type Ways,
} from './ways.ts'
export { withinSentence } from './within.ts'
