import type { Span } from '../../../../main/domain/calendar/index.ts'

/** Time to pixels and back: one rising function, its opening hours at full width and its closed hours folded. */
export interface TimeAxis {
  readonly fromAt: number
  readonly toAt: number
  readonly left: number
  readonly right: number
  /** Pixels of a minute point; held to the ends outside the axis. */
  x(at: number): number
  /** The minute point of a pixel, to the fraction; the inverse of `x`. */
  at(x: number): number
}

/** A stretch of the axis whose minutes all have one width. */
interface Stretch {
  from: number
  to: number
  x: number
  perMin: number
}

function stretches(open: readonly Span[], fromAt: number, toAt: number, fold: number): Omit<Stretch, 'x'>[] {
  const parts: Omit<Stretch, 'x'>[] = []
  let at = fromAt
  for (const span of open) {
    const from = Math.max(span.from, fromAt)
    const to = Math.min(span.to, toAt)
    if (from >= to) continue
    if (from > at) parts.push({ from: at, to: from, perMin: fold })
    parts.push({ from, to, perMin: 1 })
    at = to
  }
  if (at < toAt) parts.push({ from: at, to: toAt, perMin: fold })
  return parts
}

/**
 * The axis over `[fromAt, toAt]` drawn between the pixels `left` and `right`. `fold` is the width of a closed minute
 * beside an open one, above 0; with no opening hours at all every minute is alike.
 */
export function timeAxis(
  open: readonly Span[],
  fromAt: number,
  toAt: number,
  left: number,
  right: number,
  fold: number,
): TimeAxis {
  const parts = stretches(open, fromAt, toAt, fold)
  const weight = parts.reduce((sum, part) => sum + (part.to - part.from) * part.perMin, 0)
  const scale = (right - left) / weight
  let x = left
  const laid: Stretch[] = parts.map(part => {
    const stretch = { ...part, x, perMin: part.perMin * scale }
    x += (part.to - part.from) * stretch.perMin
    return stretch
  })
  return {
    fromAt,
    toAt,
    left,
    right,
    x(at) {
      if (at <= fromAt) return left
      const stretch = laid.find(part => at <= part.to)
      return stretch ? stretch.x + (at - stretch.from) * stretch.perMin : right
    },
    at(px) {
      if (px <= left) return fromAt
      const stretch = laid.find(part => px <= part.x + (part.to - part.from) * part.perMin)
      return stretch ? stretch.from + (px - stretch.x) / stretch.perMin : toAt
    },
  }
}

/** The nearest point of the booking grid, counted from `originAt` (a midnight of the shop). */
export function snapToGrid(at: number, gridMin: number, originAt: number): number {
  return originAt + Math.round((at - originAt) / gridMin) * gridMin
}
