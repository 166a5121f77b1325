/**
 * One stream of changes a browser. It may hold six connections to the app at a time, and a stream a page would use them
 * up; so the pages agree through a lock on the one that listens, and it tells the others.
 */
import { connection, onConnection, ping } from './connection.ts'
import { forgetOwnSaves, wasOwnSave } from './ownSaves.ts'
import { client, queryClient } from './trpc.ts'

const name = 'lustrum-changes'
const againAfterMs = 3_000

/** What is to be asked again after a save; null: everything. */
interface Changed {
  save: number | null
  paths: readonly string[] | null
}

type Word = Changed | 'lost'

/** Anything may have changed: somebody listens again. */
const anything: Changed = { save: null, paths: null }

/** Looks again at what any window has saved, and at everything when the app is back after it was away. */
export function listenForChanges(): void {
  const channel = new BroadcastChannel(name)
  const hear = (word: Word) => (word === 'lost' ? ping() : hearChange(word))
  const tell = (word: Word) => {
    hear(word)
    channel.postMessage(word)
  }
  channel.onmessage = ({ data }) => hear(data)
  onConnection(() => {
    if (connection() === 'there') lookAgain(null)
  })

  let leaving = new AbortController()
  const join = () => {
    leaving = new AbortController()
    const { signal } = leaving
    navigator.locks.request(name, { signal }, () => stream(tell, signal)).catch(() => {})
  }
  join()
  // A page that is left, closed or kept for the way back, lets go at once; the next one in line listens.
  addEventListener('pagehide', () => leaving.abort())
  addEventListener('pageshow', event => {
    if (!event.persisted) return
    join()
    lookAgain(null)
  })
}

/** What this page saves is told to it like to any other, often before its own call is answered: until then it waits. */
let saving = 0
const waiting: Changed[] = []

/** Does what may save; whoever asks for it looks everything up again afterwards, and is not told of it a second time. */
export async function whileSaving<T>(save: () => Promise<T>): Promise<T> {
  saving++
  try {
    return await save()
  } finally {
    saving--
    if (saving === 0) for (const changed of waiting.splice(0)) hearChange(changed)
  }
}

function hearChange(changed: Changed): void {
  if (changed.save === null) forgetOwnSaves()
  if (saving > 0) waiting.push(changed)
  else if (changed.save === null || !wasOwnSave(changed.save)) lookAgain(changed.paths)
}

function lookAgain(paths: readonly string[] | null): void {
  if (paths === null) void queryClient.invalidateQueries()
  else if (paths.length > 0) {
    const old = new Set(paths)
    void queryClient.invalidateQueries({
      predicate: ({ queryKey: [path] }) => Array.isArray(path) && old.has(path.join('.')),
    })
  }
}

/** Listens until told to leave. What was saved while nobody listened is not told again, so each start counts as a change. */
async function stream(tell: (word: Word) => void, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    await new Promise<void>(ended => {
      const subscription = client.system.changes.subscribe(undefined, {
        onStarted: () => tell(anything),
        onData: told => tell(told),
        onConnectionStateChange: ({ state, error }) => {
          if (state === 'connecting' && error) tell('lost')
        },
        onError: () => ended(),
        onStopped: () => ended(),
        onComplete: () => ended(),
      })
      signal.addEventListener('abort', () => {
        subscription.unsubscribe()
        ended()
      })
    })
    if (signal.aborted) return
    tell('lost')
    await new Promise(resolve => setTimeout(resolve, againAfterMs))
  }
}
