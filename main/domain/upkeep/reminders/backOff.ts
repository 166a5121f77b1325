/** How long a message that was deferred waits, attempt by attempt. */
export interface BackOff {
  readonly firstMin: number
  readonly mostMin: number
  /** After so many attempts it is given up. */
  readonly maxAttempts: number
}

/**
 * Half an hour, doubling to a day, ten attempts: 4.3 days in all. RFC 5321 section 4.5.4.1 asks a sender to wait at
 * least 30 minutes and to give up after 4 or 5 days (from memory).
 */
export const BACK_OFF: BackOff = { firstMin: 30, mostMin: 1440, maxAttempts: 10 }

/** Minutes to wait after the nth attempt failed (from 1 up); null: give up. */
export function waitAfter(
  attempt: number,
  { firstMin, mostMin, maxAttempts }: BackOff = BACK_OFF,
): number | null {
  if (attempt >= maxAttempts) return null
  return Math.min(mostMin, firstMin * 2 ** (attempt - 1))
}
