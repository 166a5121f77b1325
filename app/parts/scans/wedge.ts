/**
 * A barcode scanner that plays keyboard: a burst of keys faster than a hand can type, ended by Enter. Told apart from
 * typing by its pace alone, so that it works wherever the focus is.
 */

/** The longest pause between two keys of a scanner, in milliseconds; common practice, no source. Hands need twice that. */
export const burstMs = 50

/** The shortest code read off a container is a GTIN-8. */
const shortest = 8

/**
 * From this many keys on a burst is kept out of the field it is typed into until it is known what it is: two fingers may
 * fall together, three in a row do not.
 */
export const heldFrom = 3

export interface Burst {
  text: string
  /** Of the last key, in milliseconds of the event's own clock. */
  atMs: number
}

export type Heard =
  /** The burst so far, this key in it. */
  | { burst: Burst; code: null }
  /** The key ended a scan. */
  | { burst: null; code: string }

/** What a key means after the burst before it; `null` for a key no scanner sends, which ends any burst. */
export function hearKey(before: Burst | null, key: string, atMs: number): Heard | null {
  const running = before !== null && atMs - before.atMs <= burstMs ? before : null
  if (key === 'Enter')
    return running && running.text.length >= shortest ? { burst: null, code: running.text } : null
  if (key.length !== 1) return key === 'Shift' && running ? { burst: { ...running, atMs }, code: null } : null
  return { burst: { text: (running?.text ?? '') + key, atMs }, code: null }
}
