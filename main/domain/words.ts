import { say } from './language/index.ts'

/** Words made a sentence: a capital at the front, a full stop at the end. */
export function sentence(words: string): string {
  const said = words.charAt(0).toUpperCase() + words.slice(1)
  return /[.!?]$/.test(said) ? said : `${said}.`
}

/** `a`, `a and b`, `a, b and c`. */
export function listWords(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : say('{slice} and {at}', { slice: words.slice(0, -1).join(', '), at: words.at(-1) })
}

/** `a`, `a or b`, `a, b or c`. */
export function orWords(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : say('{slice} or {at}', { slice: words.slice(0, -1).join(', '), at: words.at(-1) })
}
