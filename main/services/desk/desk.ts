import type { Store } from '../../store/store.ts'

/** What every use case works with: the store, the clock, and who is asking. */
export interface Desk {
  store: Store
  /** The present as whole epoch minutes. */
  now(): number
  who: string
}
