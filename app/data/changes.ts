/**
 * One stream of changes a browser. It may hold six connections to the app at a time, and a stream a page would use them
 * up; so the pages agree through a lock on the one that listens, and it tells the others.
 */
import { connection, onConnection, ping } from './connection.ts'
import { client, queryClient } from './trpc.ts'

const name = 'lustrum-changes'
const againAfterMs = 3_000

type Word = 'changed' | 'lost'

/** Looks again whenever any window has saved, and when the app is back after it was away. */
export function listenForChanges(): void {
  const channel = new BroadcastChannel(name)
  const hear = (word: Word) => (word === 'changed' ? lookAgain() : ping())
  const tell = (word: Word) => {
    hear(word)
    channel.postMessage(word)
  }
  channel.onmessage = ({ data }) => hear(data)
  onConnection(() => {
    if (connection() === 'there') lookAgain()
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
    lookAgain()
  })
}

function lookAgain(): void {
  void queryClient.invalidateQueries()
}

/** Listens until told to leave. What was saved while nobody listened is not told again, so each start counts as a change. */
async function stream(tell: (word: Word) => void, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    await new Promise<void>(ended => {
      const subscription = client.system.changes.subscribe(undefined, {
        onStarted: () => tell('changed'),
        onData: () => tell('changed'),
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
