/** Words of a list read as one of ours: capitals, accents and signs aside. */
import { say } from '../language/index.ts'
import { foldText } from '../vehicle/index.ts'

const bare = (text: string) =>
  foldText(text)
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()

/** The word that is meant, by itself or by another way to write it; null where none is. */
export function readWord<T extends string>(
  text: string,
  words: readonly T[],
  also: Readonly<Record<string, T>> = {},
  shown: (word: T) => string = say,
): T | null {
  const said = bare(text)
  // In the words of the screens as well as in the app's own, whatever language the list came in.
  return words.find(word => bare(word) === said || bare(shown(word)) === said) ?? also[said] ?? null
}
