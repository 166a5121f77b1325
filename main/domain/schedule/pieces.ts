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

/** One piece apart from its list. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly value: number
  readonly slope: number
  /** 0 unless given. */
  readonly length?: number
}

export function addPiece(pieces: Pieces, { from, to, value, slope, length = 0 }: Piece): void {
  pieces.from.push(from)
  pieces.to.push(to)
  pieces.value.push(value)
  pieces.slope.push(slope)
  pieces.length.push(length)
}

/** What of a piece is taken over: its points from `from` to `to`, at `cost` less, with a length of their own. */
interface Part {
  readonly from?: number
  readonly to?: number
  readonly cost?: number
  readonly length?: number
}

/** Appends a part of piece `p` of `source`, if there is any. */
export function addPart(pieces: Pieces, source: Pieces, p: number, part: Part): void {
  const whole = source.from[p]!
  const from = Math.max(whole, part.from ?? whole)
  const to = Math.min(source.to[p]!, part.to ?? source.to[p]!)
  if (from > to) return
  addPiece(pieces, {
    from,
    to,
    value: valueAt(source, p, from) - (part.cost ?? 0),
    slope: source.slope[p]!,
    length: part.length ?? source.length[p]!,
  })
}

/** The value of piece `p` at grid point `k`. */
export function valueAt(pieces: Pieces, p: number, k: number): number {
  return pieces.value[p]! + pieces.slope[p]! * (k - pieces.from[p]!)
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
    for (let i = 0; i < n; i++) addPart(out, raw, i, {})
    return
  }
  const order = sortedByFrom(raw)
  const line: Line = { out, start: out.from.length }
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
    const slope = s < 0 ? 0 : raw.slope[s]!
    const rising = { from: x, to: end, value: sloped.topRank() + slope * x, slope }
    if (s < 0) emit(line, { from: x, to: end, value: flat.topRank(), slope: 0 })
    else if (f < 0) emit(line, rising)
    else emitHigher(line, rising, flat.topRank())
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

/** An envelope in the making: its pieces are those of `out` from `start` on. */
interface Line {
  readonly out: Pieces
  readonly start: number
}

/** The higher of a sloped piece and a constant, over the points of the piece. */
function emitHigher(line: Line, sloped: Piece, flat: number): void {
  const { from, to, value, slope } = sloped
  const last = value + slope * (to - from)
  const constant = { from, to, value: flat, slope: 0 }
  if (value >= flat && last >= flat) emit(line, sloped)
  else if (value <= flat && last <= flat) emit(line, constant)
  else {
    // The last point at which the one that begins as the higher still is.
    const turn = from + Math.floor((flat - value) / slope)
    const rest = { from: turn + 1, to, value: value + slope * (turn + 1 - from), slope }
    emit(line, { ...(slope > 0 ? constant : sloped), to: turn })
    emit(line, slope > 0 ? rest : { ...constant, from: turn + 1 })
  }
}

/** Appends a piece, or lengthens the last one where it goes on in the same line. */
function emit({ out, start }: Line, piece: Piece): void {
  const last = out.from.length - 1
  const goesOn =
    last >= start &&
    out.to[last] === piece.from - 1 &&
    out.slope[last] === piece.slope &&
    valueAt(out, last, piece.from) === piece.value
  if (goesOn) out.to[last] = piece.to
  else addPiece(out, piece)
}
