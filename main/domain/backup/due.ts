const hour = 60
const drillEvery = 30 * 24 * hour

/**
 * Whether a copy is due at `nowAt` (epoch minute), by the moments copies were made at: an hour after the last one. One
 * from a future that the clock was set back from does not count.
 */
export function copyIsDue(madeAt: readonly number[], nowAt: number): boolean {
  return !madeAt.some(at => at <= nowAt && nowAt - at < hour)
}

/**
 * Whether a copy should be tried at `nowAt`, when the last was tried at `triedAt` (null: never) and the oldest there is
 * was made at `oldestAt`: every thirty days, the first time when there is a copy a day old.
 */
export function drillIsDue(triedAt: number | null, oldestAt: number, nowAt: number): boolean {
  if (triedAt === null || triedAt > nowAt) return nowAt - oldestAt >= 24 * hour
  return nowAt - triedAt >= drillEvery
}
