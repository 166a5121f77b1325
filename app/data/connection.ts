/** Whether the app behind this page answers, found out by every call and, while it does not, by asking again. */

import { useSyncExternalStore } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { deskHeaders } from './deskId.ts'
import { doorHeaders } from './door.ts'
import { noteOwnSaves } from './ownSaves.ts'

/** `shut out`: it answers, but does not know this browser. */
export type Connection = 'there' | 'away' | 'shut out'

const againAfterMs = 2_000

export const awayWords = say(
  'The app is not answering. What you typed is kept; nothing was saved. It goes on by itself once the app is back.',
)
export const shutOutWords = say(
  'The app does not know this browser. What you typed is kept. Start Lustrum once more: it opens a new tab, and this one goes on.',
)

/** A call that got no answer. */
export class Unanswered extends Error {}

let now: Connection = 'there'
let timer: ReturnType<typeof setTimeout> | undefined
const listeners = new Set<() => void>()

function become(next: Connection): void {
  clearTimeout(timer)
  if (next !== 'there') timer = setTimeout(ping, againAfterMs)
  if (next === now) return
  now = next
  for (const listener of [...listeners]) listener()
}

/** Calls back whenever it changes; returns the way to stop. */
export function onConnection(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export const connection = (): Connection => now

export const useConnection = () => useSyncExternalStore(onConnection, connection)

/** Asks whether it answers. */
export function ping(): void {
  askApp('/trpc/system.now').catch(() => {})
}

/** What the client hands its fetch. */
interface Init {
  method?: string
  headers?: Record<string, string>
  body?: string | Blob
  signal?: AbortSignal | null | undefined
}

/** `fetch` for every call: brings what the door asks for, and puts no answer at all into words. */
export async function askApp(address: RequestInfo | URL | string, init: Init = {}): Promise<Response> {
  let answer: Response
  try {
    answer = await fetch(address, {
      ...init,
      headers: { ...init.headers, ...deskHeaders(), ...doorHeaders() },
      signal: init.signal ?? null,
    })
  } catch (error) {
    if (init.signal?.aborted) throw error
    become('away')
    throw new Unanswered(awayWords)
  }
  if (answer.status === 401) {
    become('shut out')
    throw new Unanswered(shutOutWords)
  }
  become('there')
  noteOwnSaves(answer.headers.get('x-lustrum-saves'))
  return answer
}
