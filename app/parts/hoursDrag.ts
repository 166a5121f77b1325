import type { WallSpan } from '../../main/domain/calendar/index.ts'

export const dayMinutes = 1440

/** What an end is moved by, and the shortest an opening gets. */
const step = 15

type End = 'from' | 'to'

/** The least and the most an end of an opening may be: between the openings beside it, and never past its other end. */
export function endReach(
  spans: readonly WallSpan[],
  index: number,
  end: End,
): { least: number; most: number } {
  const span = spans[index]!
  const before = spans.filter(other => other !== span && other.from < span.from).map(({ to }) => to)
  const after = spans.filter(other => other !== span && other.from > span.from).map(({ from }) => from)
  return end === 'from'
    ? { least: Math.max(0, ...before), most: span.to - step }
    : { least: span.from + step, most: Math.min(dayMinutes, ...after) }
}

/** The opening with one end moved to a minute: on the quarter of an hour next to it, as far as it may go. */
export function movedEnd(spans: readonly WallSpan[], index: number, end: End, minute: number): WallSpan {
  const { least, most } = endReach(spans, index, end)
  const { from, to } = spans[index]!
  const quarter = Number.isFinite(minute) ? Math.round(minute / step) * step : minute
  const at = least > most ? spans[index]![end] : Math.min(most, Math.max(least, quarter))
  return { from, to, [end]: at }
}
