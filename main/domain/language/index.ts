export { sayKept } from './kept.ts'
export { dateLocaleNow, decimalMark, decimalNow, localeNow, standIn } from './locale.ts'
export {
  type Catalogue,
  type Language,
  languageNow,
  languages,
  messageIn,
  say,
  speakAs,
  teach,
  textIn,
  word,
} from './say.ts'
export { withinSentence } from './within.ts'
