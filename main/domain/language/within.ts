import { languageNow } from './languages.ts'

/** A label among other words: without its capital, which German keeps on its nouns. */
export function withinSentence(label: string): string {
  return languageNow() === 'de' ? label : label.toLowerCase()
}
