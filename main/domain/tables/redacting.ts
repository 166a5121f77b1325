/** Taking a person's name and addresses out of text. */
import { say } from '../language/index.ts'
import { phonePattern } from '../vehicle/index.ts'

/** What somebody is or was known by; empty ones are passed over. */
export interface KnownBy {
  readonly names: readonly string[]
  /** E.164. */
  readonly phones: readonly string[]
  /** E-mail addresses, and any other address as it was written. */
  readonly addresses: readonly string[]
  /** Plates and identification numbers. */
  readonly plates: readonly string[]
}

/** Who stands in the place of an erased person, in the shop's language. */
export const erasedWords = () => say('erased person')

/** Where letters or digits go on, it is another word: "Marsh" is not in "Marshall". */
const alone = (pattern: string) => `(?<![\\p{L}\\p{N}])${pattern}(?![\\p{L}\\p{N}])`

const parts = (text: string) => text.trim().split(/\s+/u).filter(Boolean)
const spaced = (text: string) => parts(text).map(RegExp.escape).join('\\s+')
const plate = (text: string) => [...text.replaceAll(/[\s-]/g, '')].map(RegExp.escape).join('[\\s-]*')

/**
 * Puts "erased person" in the place of all of it, capitals and spaces aside; with `words` also of each word of a name
 * that has three letters or more, for what was written about this person and nobody else.
 */
export function redactor(known: KnownBy, words = false): (text: string) => string {
  const single = words ? known.names.flatMap(parts).filter(word => /\p{L}{3}/u.test(word)) : []
  const patterns = [
    ...known.addresses.map(spaced),
    ...known.phones.map(phonePattern),
    ...known.plates.map(plate),
    ...known.names.map(spaced),
    ...single.map(RegExp.escape),
  ].filter(pattern => pattern !== '')
  if (patterns.length === 0) return text => text
  // The longest first: a name goes whole before one of its words does.
  patterns.sort((a, b) => b.length - a.length)
  const all = new RegExp(patterns.map(alone).join('|'), 'giu')
  return text => text.replaceAll(all, erasedWords())
}

/** A value with every text in it rewritten, however deep; the names of fields stay. */
export function rewritten(
  value: unknown,
  rewrite: (text: string, field: string) => string,
  field = '',
): unknown {
  if (typeof value === 'string') return rewrite(value, field)
  if (Array.isArray(value)) return value.map(part => rewritten(part, rewrite, field))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([name, part]) => [name, rewritten(part, rewrite, name)]),
  )
}
