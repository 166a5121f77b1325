import { randomBytes } from 'node:crypto'
import { readDoor } from './keys.ts'

const openForMs = 10 * 60_000
const mostOpen = 20

export interface Entrances {
  /** A new secret: whoever brings it first, within ten minutes, is let in. */
  issue(): string
  /** Whether it lets in; it does so once. */
  use(secret: string): boolean
}

/** The secrets that let a browser in. `clockMs` only goes forward. */
export function makeEntrances(clockMs: () => number = () => performance.now()): Entrances {
  const open = new Map<string, number>()
  return {
    issue() {
      const issued = randomBytes(24).toString('base64url')
      open.set(issued, clockMs() + openForMs)
      for (const oldest of [...open.keys()].slice(0, -mostOpen)) open.delete(oldest)
      return issued
    },
    use(secret) {
      const until = open.get(secret)
      open.delete(secret)
      return until !== undefined && clockMs() < until
    },
  }
}

/** Where the running app is asked for a new entrance, by who can read its data folder. */
export const entrancePath = '/entrance'

/** A new entrance to the app that serves this folder; null where it does not answer. */
export async function askEntrance(dataDir: string): Promise<string | null> {
  const door = readDoor(dataDir)
  if (!door) return null
  const address = `http://127.0.0.1:${door.port}`
  try {
    const answer = await fetch(address + entrancePath, {
      method: 'POST',
      headers: { cookie: `lustrum-${door.port}=${door.session}`, [doorHeader]: door.token },
      signal: AbortSignal.timeout(5_000),
    })
    return answer.ok ? `${address}${await answer.text()}` : null
  } catch {
    return null
  }
}

/** The header a page sends its token in. */
export const doorHeader = 'x-lustrum-door'
