export { sayKept } from './kept.ts'
export { type Language, languageNow, languages, speakAs } from './languages.ts'
export { dateLocaleNow, decimalMark, decimalNow, localeNow, standIn } from './locale.ts'
export {
  type Catalogue,
  messageIn,
  say,
  teach,
  textIn,
  word,
} from './say.ts'
export { withinSentence } from './within.ts'
