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

/** @param points at least two, `x` and `y` both strictly rising. */
export function monotoneCurve(points: readonly CurvePoint[]): MonotoneCurve {
  const slopes = slopesOf(points)
  const first = points[0]!
  const last = points.at(-1)!

  const inPiece = (i: number, x: number) => {
    const from = points[i]!
    const to = points[i + 1]!
    const width = to.x - from.x
    const t = (x - from.x) / width
    const u = 1 - t
    return (
      from.y * (1 + 2 * t) * u * u +
      slopes[i]! * width * t * u * u +
      to.y * t * t * (3 - 2 * t) -
      slopes[i + 1]! * width * t * t * u
    )
  }
  const pieceBy = (key: 'x' | 'y', value: number) => points.findIndex(point => point[key] > value) - 1

  return {
    at: x => {
      if (x <= first.x) return first.y
      if (x >= last.x) return last.y
      return inPiece(pieceBy('x', x), x)
    },
    inverse: y => {
      if (y <= first.y) return first.x
      if (y >= last.y) return last.x
      const i = pieceBy('y', y)
      // Halving: 60 steps bring any stretch of time below the spacing of floating-point numbers.
      let low = points[i]!.x
      let high = points[i + 1]!.x
      for (let step = 0; step < 60; step++) {
        const middle = (low + high) / 2
        if (inPiece(i, middle) < y) low = middle
        else high = middle
      }
      return high
    },
  }
}

function slopesOf(points: readonly CurvePoint[]): number[] {
  const widths = points.slice(1).map((point, i) => point.x - points[i]!.x)
  const chords = points.slice(1).map((point, i) => (point.y - points[i]!.y) / widths[i]!)
  if (chords.length === 1) return [chords[0]!, chords[0]!]
  const inner = chords.slice(1).map((chord, i) => {
    const before = 2 * widths[i + 1]! + widths[i]!
    const after = widths[i + 1]! + 2 * widths[i]!
    return (before + after) / (before / chords[i]! + after / chord)
  })
  const n = chords.length - 1
  return [
    endSlope(widths[0]!, widths[1]!, chords[0]!, chords[1]!),
    ...inner,
    endSlope(widths[n]!, widths[n - 1]!, chords[n]!, chords[n - 1]!),
  ]
}

/** The slope at an end from the two pieces next to it, held between 0 and three times the outer chord. */
function endSlope(outer: number, inner: number, outerChord: number, innerChord: number): number {
  const slope = ((2 * outer + inner) * outerChord - outer * innerChord) / (outer + inner)
  return Math.min(Math.max(slope, 0), 3 * outerChord)
}
