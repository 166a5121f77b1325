/**
 * Functions of time as pieces. A search label says, for every grid point at which a step may start, how good the
 * best way there is. Between breakpoints that value is constant, or changes by one fixed `slope` per grid point, so
 * a whole set of start times is one piece, however fine the grid. Values are integers in doubles: exact.
 */
export interface Pieces {
  readonly from: number[]
  readonly to: number[]
  /** The value at `from`. */
  readonly value: number[]
  /** The change per grid point: 0, or the search's one slope. */
  readonly slope: number[]
  /** Minutes from start to end where the piece holds starts of a step; unused otherwise. */
  readonly length: number[]
}

export function noPieces(): Pieces {
  return { from: [], to: [], value: [], slope: [], length: [] }
}

export function addPiece(
  pieces: Pieces,
  from: number,
  to: number,
  value: number,
  slope: number,
  length: number,
): void {
  pieces.from.push(from)
  pieces.to.push(to)
  pieces.value.push(value)
  pieces.slope.push(slope)
  pieces.length.push(length)
}

export function clearPieces(pieces: Pieces): void {
  pieces.from.length = 0
  pieces.to.length = 0
  pieces.value.length = 0
  pieces.slope.length = 0
  pieces.length.length = 0
}

/** Whether the pieces are sorted and apart already, so that they are their own envelope. */
function isApart(pieces: Pieces): boolean {
  for (let i = 1; i < pieces.from.length; i++) if (pieces.from[i]! <= pieces.to[i - 1]!) return false
  return true
}

/** A heap of piece numbers, the highest `rank` on top. */
class Heap {
  private readonly items: number[] = []
  private readonly ranks: number[] = []

  top(): number {
    return this.items.length === 0 ? -1 : this.items[0]!
  }

  topRank(): number {
    return this.ranks[0]!
  }

  push(item: number, rank: number): void {
    const { items, ranks } = this
    let at = items.length
    items.push(item)
    ranks.push(rank)
    while (at > 0) {
      const parent = (at - 1) >> 1
      if (ranks[parent]! >= rank) break
      items[at] = items[parent]!
      ranks[at] = ranks[parent]!
      at = parent
    }
    items[at] = item
    ranks[at] = rank
  }

  pop(): void {
    const { items, ranks } = this
    const item = items.pop()!
    const rank = ranks.pop()!
    const size = items.length
    if (size === 0) return
    let at = 0
    for (;;) {
      let child = 2 * at + 1
      if (child >= size) break
      if (child + 1 < size && ranks[child + 1]! > ranks[child]!) child++
      if (ranks[child]! <= rank) break
      items[at] = items[child]!
      ranks[at] = ranks[child]!
      at = child
    }
    items[at] = item
    ranks[at] = rank
  }
}

/**
 * The upper envelope of `raw` (any order, overlapping), appended to `out` sorted and apart. Pieces have one of two
 * slopes, so at any point only the best constant and the best sloped piece matter; two heaps keep them, and between
 * two events they cross at most once. O(n log n).
 */
export function envelope(raw: Pieces, out: Pieces): void {
  const n = raw.from.length
  if (isApart(raw)) {
    for (let i = 0; i < n; i++)
      addPiece(out, raw.from[i]!, raw.to[i]!, raw.value[i]!, raw.slope[i]!, raw.length[i]!)
    return
  }
  const order = sortedByFrom(raw)
  const start = out.from.length
  const flat = new Heap()
  const sloped = new Heap()
  let next = 0
  let x = raw.from[order[0]!]!
  for (;;) {
    while (next < n && raw.from[order[next]!]! <= x) {
      const i = order[next++]!
      if (raw.slope[i] === 0) flat.push(i, raw.value[i]!)
      else sloped.push(i, raw.value[i]! - raw.slope[i]! * raw.from[i]!)
    }
    while (flat.top() >= 0 && raw.to[flat.top()]! < x) flat.pop()
    while (sloped.top() >= 0 && raw.to[sloped.top()]! < x) sloped.pop()
    const f = flat.top()
    const s = sloped.top()
    if (f < 0 && s < 0) {
      if (next === n) return
      x = raw.from[order[next]!]!
      continue
    }
    let end = next < n ? raw.from[order[next]!]! - 1 : Number.POSITIVE_INFINITY
    if (f >= 0) end = Math.min(end, raw.to[f]!)
    if (s >= 0) end = Math.min(end, raw.to[s]!)
    if (s < 0) emit(out, start, x, end, flat.topRank(), 0)
    else if (f < 0) emit(out, start, x, end, sloped.topRank() + raw.slope[s]! * x, raw.slope[s]!)
    else emitHigher(out, start, x, end, flat.topRank(), sloped.topRank(), raw.slope[s]!)
    x = end + 1
  }
}

function sortedByFrom(raw: Pieces): number[] {
  const order = raw.from.map((_, i) => i)
  if (order.length < 24) {
    for (let i = 1; i < order.length; i++) {
      const item = order[i]!
      let j = i - 1
      while (j >= 0 && raw.from[order[j]!]! > raw.from[item]!) {
        order[j + 1] = order[j]!
        j--
      }
      order[j + 1] = item
    }
    return order
  }
  return order.sort((a, b) => raw.from[a]! - raw.from[b]!)
}

/** The higher of a constant and a line (`intercept + slope * k`) on `[x, end]`. */
function emitHigher(
  out: Pieces,
  start: number,
  x: number,
  end: number,
  flat: number,
  intercept: number,
  slope: number,
): void {
  const first = intercept + slope * x
  const last = intercept + slope * end
  if (first >= flat && last >= flat) emit(out, start, x, end, first, slope)
  else if (first <= flat && last <= flat) emit(out, start, x, end, flat, 0)
  else if (slope > 0) {
    const turn = Math.floor((flat - intercept) / slope)
    emit(out, start, x, turn, flat, 0)
    emit(out, start, turn + 1, end, intercept + slope * (turn + 1), slope)
  } else {
    const turn = Math.floor((flat - intercept) / slope)
    emit(out, start, x, turn, first, slope)
    emit(out, start, turn + 1, end, flat, 0)
  }
}

/** Appends a piece, or lengthens the last one where it goes on in the same line. */
function emit(out: Pieces, start: number, from: number, to: number, value: number, slope: number): void {
  const last = out.from.length - 1
  if (
    last >= start &&
    out.to[last] === from - 1 &&
    out.slope[last] === slope &&
    out.value[last]! + slope * (from - out.from[last]!) === value
  )
    out.to[last] = to
  else addPiece(out, from, to, value, slope, 0)
}
