/** Which answers a save made old: those of the procedures that have read a table it changed. */
import { collectReads, type Reads } from '../../store/reads.ts'
import type { Save } from '../../store/saves.ts'
import type { Store } from '../../store/store.ts'

export { collectSaves } from '../../store/saves.ts'

interface Asked {
  /** What its answers were read from so far, all of them together. */
  readonly reads: Reads
  underWay: number
}

/** What a window is told of a save. `paths` names the procedures to ask again; null: any. */
export interface Told {
  readonly save: number
  readonly paths: readonly string[] | null
}

const askedOf = new WeakMap<Store, Map<string, Asked>>()

/** Answers a query, and notes what it was read from. */
export async function noteAnswer<T>(store: Store, path: string, answer: () => Promise<T>): Promise<T> {
  const all = askedOf.get(store) ?? new Map<string, Asked>()
  askedOf.set(store, all)
  const asked = all.get(path) ?? { reads: new Set(), underWay: 0 }
  all.set(path, asked)
  asked.underWay++
  try {
    return await collectReads(asked.reads, answer)
  } finally {
    asked.underWay--
  }
}

/**
 * What to tell of a save. A window can only show what was answered since the app started: after that, it hears that
 * everything may be old. An answer under way may have been read before the save, so it counts whatever it reads.
 */
export function toldOf(store: Store, { number, tables }: Save): Told {
  if (tables === null) return { save: number, paths: null }
  const paths = [...(askedOf.get(store) ?? [])].flatMap(([path, { reads, underWay }]) =>
    underWay > 0 || [...reads].some(table => tables.has(table)) ? [path] : [],
  )
  return { save: number, paths }
}
