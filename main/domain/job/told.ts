/** What words to a customer say of times, and whether that is still so when they go out. */

export const toldKinds = ['confirmation', 'dayBefore', 'ready', 'promiseMoved'] as const
export type ToldKind = (typeof toldKinds)[number]

/** The times that words name, in epoch minutes; null: they do not name it. */
export interface SaidTimes {
  readonly dropOffAt: number | null
  readonly promisedAt: number | null
  /** From when the car can be fetched. */
  readonly readyAt: number | null
}

/** A booking as far as its customer is told of it. */
export interface ToldJob {
  readonly dropOffAt: number
  readonly promisedAt: number
  readonly handoverAt: number
}

/** The times that words of this kind name. */
export function timesSaid(kind: ToldKind, job: ToldJob, nowAt: number): SaidTimes {
  const comes = kind === 'confirmation' || kind === 'dayBefore'
  return {
    dropOffAt: comes ? job.dropOffAt : null,
    promisedAt: kind === 'ready' ? null : job.promisedAt,
    readyAt: kind === 'ready' ? Math.max(job.handoverAt, nowAt) : null,
  }
}

/** Whether a booking now has other times than these; a car that is ready sooner than was said is ready then too. */
export function hasMovedSince({ dropOffAt, promisedAt, readyAt }: SaidTimes, job: ToldJob): boolean {
  return (
    (dropOffAt !== null && dropOffAt !== job.dropOffAt) ||
    (promisedAt !== null && promisedAt !== job.promisedAt) ||
    (readyAt !== null && readyAt < job.handoverAt)
  )
}
