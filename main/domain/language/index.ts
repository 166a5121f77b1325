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
  type Values,
  word,
} from './say.ts'
