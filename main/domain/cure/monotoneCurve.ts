/**
 * A smooth curve through points that rise, which rises everywhere: piecewise cubic Hermite interpolation with the
 * slopes of Fritsch and Butland (1984), a weighted harmonic mean of the neighbouring chords, and one-sided three-point
 * slopes at the ends, held so that the curve neither overshoots nor turns back (Fritsch and Carlson 1980).
 */
export interface CurvePoint {
  readonly x: number
  readonly y: number
}

export interface MonotoneCurve {
  /** The curve at `x`; before the first point and after the last it stays at their values. */
  at(x: number): number
  /** The `x` at which the curve reaches `y`: `at(inverse(y))` is `y`, held to the range of the points. */
  inverse(y: number): number
}

/** What lies between two neighbouring points: the chord that joins them and the curve's slopes at both. */
interface Piece {
  readonly from: CurvePoint
  readonly to: CurvePoint
  readonly width: number
  readonly chord: number
}

/** @param points at least two, `x` and `y` both strictly rising. */
export function monotoneCurve(points: readonly CurvePoint[]): MonotoneCurve {
  const pieces = piecesOf(points).map((piece, i, all) => ({
    ...piece,
    startSlope: slopeBetween(all[i - 1], piece, all[i + 1]),
    endSlope: slopeBetween(all[i + 1], piece, all[i - 1]),
  }))
  const inPiece = ({ from, to, width, startSlope, endSlope }: (typeof pieces)[number], x: number) => {
    const t = (x - from.x) / width
    const u = 1 - t
    return (
      from.y * (1 + 2 * t) * u * u +
      startSlope * width * t * u * u +
      to.y * t * t * (3 - 2 * t) -
      endSlope * width * t * t * u
    )
  }

  return {
    at: x => {
      const piece = pieces.find(({ to }) => to.x > x)
      if (!piece) return points.at(-1)?.y ?? 0
      return x <= piece.from.x ? piece.from.y : inPiece(piece, x)
    },
    inverse: y => {
      const piece = pieces.find(({ to }) => to.y > y)
      if (!piece) return points.at(-1)?.x ?? 0
      if (y <= piece.from.y) return piece.from.x
      // Halving: 60 steps bring any stretch of time below the spacing of floating-point numbers.
      let low = piece.from.x
      let high = piece.to.x
      for (let step = 0; step < 60; step++) {
        const middle = (low + high) / 2
        if (inPiece(piece, middle) < y) low = middle
        else high = middle
      }
      return high
    },
  }
}

function piecesOf(points: readonly CurvePoint[]): Piece[] {
  return points.slice(1).map((to, i) => {
    const from = points[i] ?? to
    const width = to.x - from.x
    return { from, to, width, chord: (to.y - from.y) / width }
  })
}

/**
 * The slope where `piece` meets its neighbour on one side; at an end of the curve, where there is none, by the piece and
 * its neighbour on the other side.
 */
function slopeBetween(neighbour: Piece | undefined, piece: Piece, other: Piece | undefined): number {
  if (!neighbour) return other ? endSlope(piece, other) : piece.chord
  const near = 2 * piece.width + neighbour.width
  const far = piece.width + 2 * neighbour.width
  return (near + far) / (near / neighbour.chord + far / piece.chord)
}

/** The slope at an end from the two pieces next to it, held between 0 and three times the outer chord. */
function endSlope(outer: Piece, inner: Piece): number {
  const slope =
    ((2 * outer.width + inner.width) * outer.chord - outer.width * inner.chord) / (outer.width + inner.width)
  return Math.min(Math.max(slope, 0), 3 * outer.chord)
}
