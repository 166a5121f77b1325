import './temporal.ts'
import { type Language, languages, speakAs, teach } from '../main/domain/language/index.ts'
import { patient } from './patient.ts'

/** The host writes the language of the shop into the page. */
const language: Language = languages.find(each => each === document.documentElement.lang) ?? 'en'

speakAs(() => language)
if (language !== 'en') {
  const words = await (await fetch(`/words/${language}.json`)).json()
  teach(language, () => words)
}
await patient(() => import('./window.tsx'))
