import { Refusal } from '../domain/refusal.ts'

/**
 * The clock of this run in whole epoch minutes. LUSTRUM_NOW (an ISO instant) sets it at start, for tests and for
 * looking at another day; it runs on from there.
 */
export function startClock(env: NodeJS.ProcessEnv): () => number {
  const set = env.LUSTRUM_NOW
  if (!set) return () => Math.floor(Temporal.Now.instant().epochMilliseconds / 60_000)
  let from: Temporal.Instant
  try {
    from = Temporal.Instant.from(set)
  } catch {
    throw new Refusal(
      'bad-instant',
      'LUSTRUM_NOW',
      set,
      `LUSTRUM_NOW="${set}" is no instant: write it as 2026-04-15T07:40:00Z.`,
    )
  }
  const began = performance.now()
  return () => Math.floor((from.epochMilliseconds + performance.now() - began) / 60_000)
}
