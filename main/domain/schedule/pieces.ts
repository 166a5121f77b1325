/**
 * Functions of time as pieces. A search label says, for every grid point at which a step may start, how good the
 * best way there is. Between breakpoints that value is constant, or changes by one fixed `slope` per grid point, so
 * a whole set of start times is one piece, however fine the grid. Values are integers in doubles: exact.
 */
export interface Piece {
  /** Its first and last grid point. */
  readonly from: number
  readonly to: number
  /** The value at `from`. */
  readonly value: number
  /** The change per grid point: 0, or the search's one slope. */
  readonly slope: number
  /** Minutes from start to end where the piece holds starts of a step; 0 otherwise. */
  readonly length: number
}

/**
 * Appends what of a piece lies from `from` to `to`, at `cost` less, if there is any. In the midst of every search: its
 * numbers are passed one by one, because objects of many shapes took half as long again.
 */
export function addPart(
  out: Piece[],
  { from: first, to: last, value, slope, length: own }: Piece,
  from: number,
  to: number,
  cost = 0,
  length = own,
): void {
  const begin = first > from ? first : from
  const end = last < to ? last : to
  if (begin <= end)
    out.push({ from: begin, to: end, value: value + slope * (begin - first) - cost, slope, length })
}

/** The value of a piece at grid point `k`. */
export function valueAt(piece: Piece, k: number): number {
  return piece.value + piece.slope * (k - piece.from)
}

/** A piece in the heap; for one that slopes, `rank` is its value at grid point 0. */
interface Ranked {
  readonly to: number
  readonly slope: number
  readonly rank: number
}

/** A heap of pieces, the highest `rank` on top. */
class Heap {
  private readonly items: Ranked[] = []

  /** The highest of those that last to grid point `k`; the ones on top of it are let go. */
  topAt(k: number): Ranked | undefined {
    for (let top = this.items[0]; ; top = this.items[0]) {
      if (!top || top.to >= k) return top
      this.pop()
    }
  }

  push(item: Ranked): void {
    const { items } = this
    let at = items.length
    items.push(item)
    while (at > 0) {
      const above = (at - 1) >> 1
      const parent = items[above]
      if (!parent || parent.rank >= item.rank) break
      items[at] = parent
      at = above
    }
    items[at] = item
  }

  private pop(): void {
    const { items } = this
    const item = items.pop()
    if (!item || items.length === 0) return
    let at = 0
    for (;;) {
      const left = items[2 * at + 1]
      const right = items[2 * at + 2]
      const child = left && right && right.rank > left.rank ? right : left
      if (!child || child.rank <= item.rank) break
      items[at] = child
      at = 2 * at + (child === right ? 2 : 1)
    }
    items[at] = item
  }
}

/**
 * The upper envelope of `raw` (any order, overlapping), sorted and apart. Pieces have one of two slopes, so at any
 * point only the best constant and the best sloped piece matter; two heaps keep them, and between two events they
 * cross at most once. O(n log n).
 */
export function envelope(raw: readonly Piece[]): readonly Piece[] {
  if (isApart(raw)) return raw
  const sorted = raw.toSorted((a, b) => a.from - b.from)
  const out: Piece[] = []
  const flats = new Heap()
  const slopes = new Heap()
  let next = 0
  let x = Number.NEGATIVE_INFINITY
  for (;;) {
    let coming = sorted[next]
    for (; coming && coming.from <= x; coming = sorted[++next]) {
      const { to, slope } = coming
      if (slope === 0) flats.push({ to, slope, rank: coming.value })
      else slopes.push({ to, slope, rank: coming.value - slope * coming.from })
    }
    const flat = flats.topAt(x)
    const sloped = slopes.topAt(x)
    if (!flat && !sloped) {
      if (!coming) return out
      x = coming.from
      continue
    }
    let to = coming ? coming.from - 1 : Number.POSITIVE_INFINITY
    if (flat) to = Math.min(to, flat.to)
    if (sloped) to = Math.min(to, sloped.to)
    const constant = flat && { from: x, to, value: flat.rank, slope: 0, length: 0 }
    const rising = sloped && {
      from: x,
      to,
      value: sloped.rank + sloped.slope * x,
      slope: sloped.slope,
      length: 0,
    }
    if (constant && rising) emitHigher(out, rising, constant)
    else emit(out, constant ?? rising)
    x = to + 1
  }
}

/** Whether the pieces are sorted and apart already, so that they are their own envelope. */
function isApart(pieces: readonly Piece[]): boolean {
  let last = Number.NEGATIVE_INFINITY
  for (const { from, to } of pieces) {
    if (from <= last) return false
    last = to
  }
  return true
}

/** The higher of a sloped piece and a constant, over the points of both. */
function emitHigher(out: Piece[], sloped: Piece, constant: Piece): void {
  const { from, to, value, slope } = sloped
  const last = valueAt(sloped, to)
  const flat = constant.value
  if (value >= flat && last >= flat) emit(out, sloped)
  else if (value <= flat && last <= flat) emit(out, constant)
  else {
    // The last point at which the one that begins as the higher still is.
    const turn = from + Math.floor((flat - value) / slope)
    const rest = { ...sloped, from: turn + 1, value: valueAt(sloped, turn + 1) }
    emit(out, { ...(slope > 0 ? constant : sloped), to: turn })
    emit(out, slope > 0 ? rest : { ...constant, from: turn + 1 })
  }
}

/** Appends a piece, or lengthens the last one where it goes on in the same line. */
function emit(out: Piece[], piece: Piece | undefined): void {
  const last = out.at(-1)
  if (!piece) return
  const goesOn =
    last?.to === piece.from - 1 && last.slope === piece.slope && valueAt(last, piece.from) === piece.value
  if (goesOn) out[out.length - 1] = { ...last, to: piece.to }
  else out.push(piece)
}
