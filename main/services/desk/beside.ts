/** Long work beside the desk: one of its kind at a time for each database, with progress and a stop. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { Refusal } from '../../domain/refusal.ts'
import type { Store } from '../../store/store.ts'

/** How far a piece of work has come; the work itself counts. */
export interface Pace {
  done: number
  total: number
  /** Gives everybody else their turn. False: somebody asked to stop, and the work ends where it is. */
  turn(): Promise<boolean>
}

interface Work<T> {
  readonly pace: Pace
  stopped: boolean
  ends: Promise<void> | null
  result: T | null
  failed: string | null
}

/** What is under way for a database, of whatever kind. */
const underWay = new WeakMap<Store, Set<Work<unknown>>>()

/** A pace nobody watches, for work that somebody waits for. */
export function ownPace(): Pace {
  return { done: 0, total: 0, turn: () => nextTurn(true) }
}

/** One kind of work. `failed` says in words what kept it from being done. */
export function besideDesk<T>(failedWords: (error: unknown) => string) {
  const works = new WeakMap<Store, Work<T>>()
  return {
    /** Begins it and answers at once; joins what is under way. */
    begin(store: Store, run: (pace: Pace) => Promise<T>): void {
      if (works.get(store)?.ends) return
      const pace: Pace = {
        ...ownPace(),
        async turn() {
          await nextTurn()
          return !work.stopped
        },
      }
      const work: Work<T> = { pace, stopped: false, ends: null, result: null, failed: null }
      works.set(store, work)
      const all = underWay.get(store) ?? new Set()
      underWay.set(store, all.add(work))
      work.ends = nextTurn()
        .then(() => run(pace))
        .then(result => {
          work.result = result
        })
        .catch(error => {
          if (!work.stopped) work.failed = error instanceof Refusal ? error.message : failedWords(error)
        })
        .finally(() => {
          work.ends = null
          all.delete(work)
        })
    },
    /** What is under way, or what came of the last. */
    stands(store: Store) {
      const work = works.get(store)
      const { done = 0, total = 0 } = work?.pace ?? {}
      return {
        working: work?.ends ? { done, total } : null,
        result: work?.result ?? null,
        failed: work?.failed ?? null,
      }
    },
    /** Asks it to end, and waits until it has. */
    async stop(store: Store): Promise<void> {
      await end(works.get(store))
    },
    /** Waits until it is done. */
    async ends(store: Store): Promise<void> {
      await works.get(store)?.ends
    },
  }
}

/** Ends everything that goes on beside a desk, before its database is closed. */
export async function endBeside(store: Store): Promise<void> {
  await Promise.all([...(underWay.get(store) ?? [])].map(end))
}

async function end(work: Work<unknown> | undefined): Promise<void> {
  if (!work?.ends) return
  work.stopped = true
  await work.ends
}
