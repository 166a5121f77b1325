import type { AuditEntry, Stamp, Store, Tx } from '../../store/store.ts'

/** What every use case works with: the store, the clock, and who is asking. */
export interface Desk {
  store: Store
  /** The present as whole epoch minutes. */
  now(): number
  who: string
  /** Which of the shop's desks: what its browser calls itself. Whoever takes back takes back what was done at their own. */
  deskId?: string | undefined
}

/** Whose act it is, and when. */
export function stampOf(desk: Desk): Stamp {
  return { who: desk.who, at: desk.now(), deskId: desk.deskId }
}

/** Notes one line of what was done. */
export type Audit = (entry: AuditEntry) => void

/**
 * Everything one act writes, with its audit lines, or nothing of it; `at` is the moment of the act. `followed: false`: it
 * is not taken back row by row.
 */
export function act<T>(
  desk: Desk,
  work: (tx: Tx, audit: Audit, at: number) => Promise<T>,
  unlike: Pick<Stamp, 'followed'> = {},
): Promise<T> {
  const stamp = stampOf(desk)
  return desk.store.transact({ ...stamp, ...unlike }, (tx, audit) => work(tx, audit, stamp.at))
}
