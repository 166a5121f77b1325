import type { AuditEntry, Store, Tx } from '../../store/store.ts'

/** What every use case works with: the store, the clock, and who is asking. */
export interface Desk {
  store: Store
  /** The present as whole epoch minutes. */
  now(): number
  who: string
}

/** Notes one line of what was done. */
export type Audit = (entry: AuditEntry) => void

/** Everything one act writes, with its audit lines, or nothing of it; `at` is the moment of the act. */
export function act<T>(desk: Desk, work: (tx: Tx, audit: Audit, at: number) => Promise<T>): Promise<T> {
  const at = desk.now()
  return desk.store.transact({ who: desk.who, at }, (tx, audit) => work(tx, audit, at))
}
