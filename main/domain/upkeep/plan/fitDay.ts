import { planDay } from './limits.ts'
import type { Absence } from './plan.ts'

/** A due day with the first and last day that still serve, in day numbers. */
export interface DueWindow {
  readonly due: number
  readonly first: number
  readonly last: number
}

/** Days `[from, to)`. */
export interface DaySpan {
  readonly from: number
  readonly to: number
}

/** Absences as day numbers in order, those that touch joined. */
export function absenceSpans(away: readonly Absence[]): DaySpan[] {
  if (away.length === 0) return []
  const spans = away.map(({ from, to }) => ({ from: planDay(from, 'away'), to: planDay(to, 'away') }))
  spans.sort((a, b) => a.from - b.from)
  const joined: { from: number; to: number }[] = []
  for (const span of spans) {
    const last = joined.at(-1)
    if (last && span.from <= last.to) last.to = Math.max(last.to, span.to)
    else joined.push(span)
  }
  return joined
}

/** What was done to a due day, and why. */
export type Shift =
  | { readonly code: 'away-before' | 'away-after' | 'away-past-window'; readonly span: DaySpan }
  | { readonly code: 'closed-day' }
  | { readonly code: 'closed-window' }

/**
 * A due window fitted to a car's absences. A due day inside one moves to the last day before it or the first day
 * back, whichever is nearer and still in the window (the earlier where equal), never before `today`; if neither is,
 * to the first day back, beyond the window. The window never reaches into an absence next to its due day.
 */
export function fitToAbsences(
  window: DueWindow,
  spans: readonly DaySpan[],
  today: number,
): { window: DueWindow; shift: Shift | null } {
  const { due } = window
  let { first, last } = window
  const inside = spans.find(span => span.from <= due && due < span.to)
  if (!inside) {
    for (const span of spans) {
      if (span.to <= due && span.to > first) first = span.to
      if (span.from > due && span.from <= last) last = span.from - 1
    }
    return { window: { due, first, last }, shift: null }
  }
  const before = inside.from - 1
  const back = inside.to
  const early = before >= first && before >= today
  const late = back <= last
  if (early && (!late || due - before <= back - due))
    return { window: { due: before, first, last: before }, shift: { code: 'away-before', span: inside } }
  if (late) return { window: { due: back, first: back, last }, shift: { code: 'away-after', span: inside } }
  return {
    window: { due: back, first: back, last: back + (last - due) },
    shift: { code: 'away-past-window', span: inside },
  }
}

/**
 * A due window moved to an open day: the nearest in the window (the earlier where equal), else the first one after
 * it within a year. A due day already past stays: it was due then.
 */
export function fitToOpenDays(
  window: DueWindow,
  isOpen: (day: number) => boolean,
  today: number,
): { window: DueWindow; shift: Shift | null } {
  const { due, first, last } = window
  if (due < today || isOpen(due)) return { window, shift: null }
  for (let off = 1; due - off >= first || due + off <= last; off++) {
    const earlier = due - off
    if (earlier >= first && earlier >= today && isOpen(earlier))
      return { window: { due: earlier, first, last }, shift: { code: 'closed-day' } }
    if (due + off <= last && isOpen(due + off))
      return { window: { due: due + off, first, last }, shift: { code: 'closed-day' } }
  }
  for (let day = last + 1; day <= last + 366; day++)
    if (isOpen(day)) return { window: { due: day, first: day, last: day }, shift: { code: 'closed-window' } }
  return { window, shift: null }
}
