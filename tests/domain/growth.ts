/**
 * How much longer reading sixteen times the text takes. A machine busy with other things may stretch either reading, so it
 * is tried again until the times are in proportion: one that grows faster never shows them so.
 */
export function growth(read: (text: string) => void, shape: (size: number) => string, size: number): number {
  const [small, large] = [shape(size), shape(16 * size)]
  let [smallMs, largeMs] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  let grown = Number.POSITIVE_INFINITY
  for (let turn = 0; turn < 5 || (turn < 40 && grown >= IN_PROPORTION); turn++) {
    smallMs = Math.min(
      smallMs,
      msOf(() => read(small)),
    )
    largeMs = Math.min(
      largeMs,
      msOf(() => read(large)),
    )
    // Below a fifth of a millisecond the clock decides, not the reading.
    grown = largeMs / Math.max(0.2, smallMs)
  }
  return grown
}

function msOf(act: () => void): number {
  const from = performance.now()
  act()
  return performance.now() - from
}

/** In proportion it grows sixteenfold, by the square 256 times, by the cube 4,096 times. */
export const IN_PROPORTION = 100
