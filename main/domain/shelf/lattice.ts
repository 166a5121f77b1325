/** The step of the lattice demand is counted on: a whole part of a pack, fine enough for a single draw. */

// A draw of three or more steps is told apart well enough for an order point; finer costs time and changes nothing.
const STEPS_PER_DRAW = 3
const MOST_STEPS_PER_PACK = 48
// Expected use over the days ahead fills at most this much of the lattice, so that its tail fits too.
const MEAN_CELLS = 80

/**
 * Step in centi for a product sold in packs of `packCenti`, drawn `drawCenti` at a time on average, of which `aheadCenti`
 * are expected over the longest span looked ahead.
 */
export function latticeStep(packCenti: number, drawCenti: number, aheadCenti: number): number {
  const finest = Math.max(
    drawCenti / STEPS_PER_DRAW,
    aheadCenti / MEAN_CELLS,
    packCenti / MOST_STEPS_PER_PACK,
    1,
  )
  return packCenti / Math.max(1, Math.floor(packCenti / finest))
}
