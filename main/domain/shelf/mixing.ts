/**
 * Two lots of one coating on one car: colour, gloss and cure may differ between batches, and after it has cured nobody
 * can tell which panel has which (common practice, no source). Bottles whose printed batch is the same are no mix; a batch
 * nobody wrote down may be any.
 */
export interface MixedLot {
  readonly id: string
  readonly batch: string | null
}

/** Whether what is drawn now puts a batch on the car that is not on it yet, beside another. */
export function mixesLots(before: readonly MixedLot[], now: readonly MixedLot[]): boolean {
  const laid = new Set(before.map(batchOf))
  const after = new Set([...laid, ...now.map(batchOf)])
  return after.size > 1 && after.size > laid.size
}

function batchOf({ id, batch }: MixedLot): string {
  return batch === null ? `lot ${id}` : `batch ${batch.trim().toLowerCase()}`
}
