import type { Store } from '../../store/store.ts'

export interface Timing {
  calls: number
  totalMs: number
  slowestMs: number
}

const timings = new WeakMap<Store, Map<string, Timing>>()

/** Notes how long an answer took; kept until the app ends. */
export function noteCall(store: Store, path: string, ms: number): void {
  const of = timings.get(store) ?? new Map<string, Timing>()
  timings.set(store, of)
  const { calls, totalMs, slowestMs } = of.get(path) ?? { calls: 0, totalMs: 0, slowestMs: 0 }
  of.set(path, { calls: calls + 1, totalMs: totalMs + ms, slowestMs: Math.max(slowestMs, ms) })
}

/** The procedures that took longest at the worst, slowest first. */
export function slowestCalls(store: Store, most: number): [path: string, timing: Timing][] {
  return [...(timings.get(store) ?? [])].sort(([, a], [, b]) => b.slowestMs - a.slowestMs).slice(0, most)
}
