/**
 * A temperature over time as stretches that follow each other without a hole, each a straight line. Kept in columns:
 * a bay's log of 100,000 readings then costs no object a reading, which is most of the time it would take.
 */

/** Measured: between readings close enough together. Assumed: the log is silent. Projected: still to come. */
export type Part = 'measured' | 'assumed' | 'projected'

const partNames: readonly Part[] = ['measured', 'assumed', 'projected']

export interface Stretches {
  readonly fromAt: number
  count(): number
  /** The minute the last stretch ends; `fromAt` while there is none. */
  endAt(): number
  /** Goes on to `to` from where the last one ended; nothing when that is not later. */
  add(to: number, fromC: number, toC: number, part: Part): void
  from(i: number): number
  to(i: number): number
  fromC(i: number): number
  toC(i: number): number
  part(i: number): Part
  /** The temperature at a minute inside stretch `i`. */
  celsiusAt(i: number, at: number): number
}

/** An empty row of stretches beginning at `fromAt`, with room for `most` of them. */
export function stretchesFrom(fromAt: number, most: number): Stretches {
  const marks = new Float64Array(most + 1)
  const starts = new Float64Array(most)
  const ends = new Float64Array(most)
  const parts = new Uint8Array(most)
  marks[0] = fromAt
  let count = 0
  return {
    fromAt,
    count: () => count,
    endAt: () => marks[count]!,
    add: (to, fromC, toC, part) => {
      if (to <= marks[count]!) return
      starts[count] = fromC
      ends[count] = toC
      parts[count] = partNames.indexOf(part)
      count++
      marks[count] = to
    },
    from: i => marks[i]!,
    to: i => marks[i + 1]!,
    fromC: i => starts[i]!,
    toC: i => ends[i]!,
    part: i => partNames[parts[i]!]!,
    celsiusAt: (i, at) => {
      const fromC = starts[i]!
      const toC = ends[i]!
      // A steady stretch may be endless, where the share of it that has passed has no value.
      if (fromC === toC) return fromC
      return fromC + ((toC - fromC) * (at - marks[i]!)) / (marks[i + 1]! - marks[i]!)
    },
  }
}
