import type { FloorJob } from './floorJobs.ts'

/**
 * Since when a car that is ready has not been fetched, in epoch minutes: a grid step (`gridMin`) after its promise, or
 * after it was ready, or was agreed to be fetched, where that came later. Null: it is not here, not ready, or its owner is still in time.
 */
export function unfetchedSince(
  job: Pick<FloorJob, 'status' | 'promisedAt' | 'handoverAt' | 'fetchAt'>,
  { nowAt, gridMin }: { readonly nowAt: number; readonly gridMin: number },
): number | null {
  if (job.status !== 'inShop') return null
  const dueAt = Math.max(job.promisedAt, job.handoverAt, job.fetchAt ?? job.promisedAt)
  return nowAt >= dueAt + gridMin ? dueAt : null
}
