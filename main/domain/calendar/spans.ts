import { firstIndex } from './search.ts'

/**
 * Sets of half-open time spans `[from, to)` in whole minutes. A set is an array sorted by `from` whose spans are
 * not empty, do not overlap and do not touch; every function here takes such sets and returns one.
 */
export interface Span {
  readonly from: number
  readonly to: number
}

/** Any list of spans made into a set: empty ones dropped, overlapping and touching ones joined. */
export function spanSet(spans: readonly Span[]): Span[] {
  const sorted = spans.filter(span => span.from < span.to).sort((a, b) => a.from - b.from)
  const set: Span[] = []
  for (const span of sorted) {
    const last = set.at(-1)
    if (last && span.from <= last.to)
      set[set.length - 1] = { from: last.from, to: Math.max(last.to, span.to) }
    else set.push({ from: span.from, to: span.to })
  }
  return set
}

/** The minutes in both sets. */
export function intersection(a: readonly Span[], b: readonly Span[]): Span[] {
  const set: Span[] = []
  let i = 0
  let j = 0
  for (;;) {
    const x = a[i]
    const y = b[j]
    if (!x || !y) return set
    const from = Math.max(x.from, y.from)
    const to = Math.min(x.to, y.to)
    if (from < to) set.push({ from, to })
    if (x.to < y.to) i++
    else j++
  }
}

/** The minutes of `a` that are not in `b`. */
export function difference(a: readonly Span[], b: readonly Span[]): Span[] {
  const set: Span[] = []
  let j = 0
  for (const span of a) {
    let from = span.from
    while (j < b.length && b[j]!.to <= from) j++
    for (let k = j; k < b.length && b[k]!.from < span.to; k++) {
      if (b[k]!.from > from) set.push({ from, to: b[k]!.from })
      from = Math.max(from, b[k]!.to)
    }
    if (from < span.to) set.push({ from, to: span.to })
  }
  return set
}

/** How many minutes the set holds. */
export function minutesIn(set: readonly Span[]): number {
  return set.reduce((sum, span) => sum + span.to - span.from, 0)
}

/** The part of the set inside `[fromAt, toAt)`. */
export function clip(set: readonly Span[], fromAt: number, toAt: number): Span[] {
  return intersection(set, fromAt < toAt ? [{ from: fromAt, to: toAt }] : [])
}

/**
 * The index of the first span that ends after `at` (the span `at` lies in, else the next one); the set's length when
 * there is none. Found by halving, so that a look-up in a long horizon costs next to nothing.
 */
export function indexFrom(set: readonly Span[], at: number): number {
  return firstIndex(set.length, i => set[i]!.to > at)
}
