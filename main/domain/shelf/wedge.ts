/**
 * Tells a keyboard-wedge scanner from a person typing. A scanner types a whole code at a pace no hand keeps and ends
 * with Enter or Tab; whatever comes slower, or ends otherwise, is the keyboard's. Pure: keys and their times go in, the
 * next state and perhaps a code come out.
 */
export interface WedgeState {
  readonly text: string
  /** When the last character came, in milliseconds of any steady clock. */
  readonly lastMs: number
}

export interface WedgeKey {
  /** As the browser names it: a single character, or `Enter`, `Tab`, ... */
  readonly key: string
  readonly ms: number
}

export interface WedgeStep {
  readonly state: WedgeState
  /** A whole code, when this key ended one. */
  readonly code: string | null
}

export const WEDGE_START: WedgeState = { text: '', lastMs: Number.NEGATIVE_INFINITY }

// Fast typists leave 60 ms and more between keys; scanners send one every 1 to 20 ms (common practice, no source).
const FASTEST_HAND_MS = 35
const SHORTEST_CODE = 4

/** Takes one key. */
export function wedgeKey(state: WedgeState, { key, ms }: WedgeKey): WedgeStep {
  const swift = ms - state.lastMs <= FASTEST_HAND_MS
  if (key === 'Enter' || key === 'Tab') {
    const code = swift && state.text.length >= SHORTEST_CODE ? state.text : null
    return { state: WEDGE_START, code }
  }
  // Shift and its like come with capital letters and carry no text.
  if (key.length !== 1) return { state, code: null }
  return { state: { text: swift ? state.text + key : key, lastMs: ms }, code: null }
}
