export const languages = ['en', 'de'] as const

/** A language the app speaks; English is what its own texts are written in. */
export type Language = (typeof languages)[number]

let asked: () => Language = () => 'en'

/** Who is asked, at each word, which language it is to be in: a window knows its own, the server that of the request. Returns who was asked before. */
export function speakAs(language: () => Language): () => Language {
  const before = asked
  asked = language
  return before
}

/** The language words are said in at this moment. */
export function languageNow(): Language {
  return asked()
}
