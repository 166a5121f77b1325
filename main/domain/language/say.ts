/*
 * Every word people read, in the language it is read in. The English text is its own key: a screen, a document or a
 * refusal says `say('Bay {bay} is taken', { bay })`, and the catalogue of another language (assets/words) holds what
 * to say instead. Texts are ICU messages, so a count is `{n, plural, one {# car} other {# cars}}`.
 */
import { IntlMessageFormat } from 'intl-messageformat'
import { type Language, languageNow } from './languages.ts'
import { decimalNow } from './locale.ts'

/** English text → what to say instead. */
export type Catalogue = Readonly<Record<string, string>>

/** What a text names; whatever is no number goes in as its text. */
type Values = Readonly<Record<string, unknown>>

const catalogues = new Map<Language, () => Catalogue>()
const formats = new Map<string, IntlMessageFormat>()

/** Gives a language its words, in place of those it had; they are asked for when the first of them is said. */
export function teach(language: Language, words: () => Catalogue): void {
  let read: Catalogue | undefined
  catalogues.set(language, () => {
    read ??= words()
    return read
  })
}

/** The text in a language, before its values are put in; itself where the language has no word for it. */
export function textIn(language: Language, text: string): string {
  const words = language === 'en' ? undefined : catalogues.get(language)?.()
  // A text may be what somebody typed, such as "constructor", which every object has.
  const own = words && Object.hasOwn(words, text) ? words[text] : undefined
  return own ?? withoutContext(text)
}

/**
 * The text in the language of the moment with its values put in. A value is put in as it stands, so numbers and times
 * come in the words of the shop. Where one English text means two things, `'Book||the verb'` keeps them apart: what
 * follows the bars is for whoever translates.
 * @throws where a value that the text names is missing: a fault in the code, not in what was typed.
 */
export function say(text: string, values?: Values): string {
  const language = languageNow()
  const own = textIn(language, text)
  return values === undefined && !own.includes('{') && !own.includes("'")
    ? own
    : String(messageIn(language, own, true).format(values && plain(values)))
}

function plain(values: Values): Record<string, string | number> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      if (typeof value !== 'number') return [name, String(value)]
      // A count stays a number, for its plural; a decimal gets the mark of the language.
      return [name, Number.isInteger(value) ? value : decimalNow(value)]
    }),
  )
}

/** The message of a text, made once. `plainTags` leaves `<b>` as it is written. */
export function messageIn(language: Language, text: string, plainTags: boolean): IntlMessageFormat {
  const key = `${language} ${plainTags} ${text}`
  let made = formats.get(key)
  if (!made) {
    if (formats.size >= mostFormats) formats.clear()
    made = new IntlMessageFormat(text, language, undefined, { ignoreTag: plainTags })
    formats.set(key, made)
  }
  return made
}

/** Far above the number of texts there are; a bound on what a fault could fill. */
const mostFormats = 20_000

/** Marks a text that is said later, where it is used: `say(label)`. The catalogue must hold it. */
export function word<const Text extends string>(text: Text): Text {
  return text
}

function withoutContext(text: string): string {
  const bars = text.indexOf('||')
  return bars < 0 ? text : text.slice(0, bars)
}
