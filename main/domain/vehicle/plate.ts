import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Longest plate we keep, in letters and digits; no country's ordinary series is longer than nine. */
const longest = 12

export interface Plate {
  /** As it is shown: capitals, single spaces, its own hyphens. */
  readonly shown: string
  /** For finding and for telling two apart: letters and digits only. */
  readonly key: string
}

/** Reads a number plate as somebody typed it. Refuses one without a letter or digit, or longer than 12 of them. */
export function readPlate(text: string, field = 'plate'): Plate {
  const written = text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[‐-―−]/gu, '-')
    .replaceAll(/[^\p{L}\p{N}\s·.-]/gu, '')
    .replaceAll(/\s+/gu, ' ')
  // From the first letter or digit to the last.
  const shown = /[\p{L}\p{N}](?:.*[\p{L}\p{N}])?/u.exec(written)?.[0] ?? ''
  const key = plateKey(shown)
  if (key.length === 0 || [...key].length > longest)
    refuse(
      'plate-bad',
      { [field]: text },
      say(
        '"{text}" is not a number plate; type its letters and digits, at most {longest}, or leave it empty.',
        { text, longest },
      ),
    )
  return { shown, key }
}

/** Letters and digits of a plate, capitals; two writings of one plate have one key. */
export function plateKey(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, '')
}

/** A key in which the look-alikes O and 0, and I and 1, are one: to find a plate that was misread, never to store one. */
export function looseKey(text: string): string {
  return plateKey(text).replaceAll('O', '0').replaceAll('I', '1')
}
