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
