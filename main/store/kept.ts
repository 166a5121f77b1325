/** Reads that stay true until something is saved: asked again before that, they are not read again. */

import { languageNow } from '../domain/language/index.ts'
import { collectReads, noteReads, type Reads } from './reads.ts'

/** Of each connection that only reads, how many acts have ended since it was opened. */
const actsEnded = new WeakMap<object, number>()

/** More answers than this of one kind are not kept; a desk asks for a few, again and again. */
const most = 8

/** A connection whose reads may be kept: every write to its database must be followed by `forgetReads`. */
export function mayKeepReads(read: object): void {
  actsEnded.set(read, 0)
}

/** An act has ended, and may have saved something. */
export function forgetReads(read: object): void {
  actsEnded.set(read, (actsEnded.get(read) ?? 0) + 1)
}

interface Answer<T> {
  loading: Promise<T>
  /** What it was read from: whoever is given it has read that too. */
  reads: Reads
}

interface Kept<T> {
  ended: number
  byKey: Map<string, Answer<T>>
}

/**
 * The same read, answered from memory as long as nothing was saved since; `keyOf` tells apart what it is asked for. Within
 * an act it always reads: what the act has written is not saved yet. What it gives is shared, and nobody changes it.
 */
export function keptUntilSaved<Tx extends object, A extends unknown[], T>(
  load: (tx: Tx, ...asked: A) => Promise<T>,
  keyOf: (...asked: A) => string = () => '',
): (tx: Tx, ...asked: A) => Promise<T> {
  const keptOf = new WeakMap<object, Kept<T>>()
  return (tx, ...asked) => {
    const ended = actsEnded.get(tx)
    if (ended === undefined) return load(tx, ...asked)
    let kept = keptOf.get(tx)
    if (kept?.ended !== ended) {
      kept = { ended, byKey: new Map() }
      keptOf.set(tx, kept)
    }
    const { byKey } = kept
    // Words may stand in what was read.
    const key = `${languageNow()} ${keyOf(...asked)}`
    const known = byKey.get(key)
    if (known) return given(known)
    const reads: Reads = new Set()
    const loading = collectReads(reads, () => load(tx, ...asked))
    byKey.set(key, { loading, reads })
    loading.catch(() => byKey.delete(key))
    const [oldest] = byKey.keys()
    if (byKey.size > most && oldest !== undefined) byKey.delete(oldest)
    return given({ loading, reads })
  }
}

async function given<T>({ loading, reads }: Answer<T>): Promise<T> {
  try {
    return await loading
  } finally {
    noteReads(reads)
  }
}
