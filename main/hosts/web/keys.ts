import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto'
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * What a browser that was let in brings. A cookie goes to every port of its computer, so any other server there may see
 * it; the token is kept by the page, which hands it to this port only. Neither is worth anything without the other.
 */
export interface DoorKeys {
  /** The cookie's value. */
  session: string
  /** Sent by the page with each call. */
  token: string
}

export interface KeptDoor extends DoorKeys {
  port: number
}

const secret = () => randomBytes(32).toString('base64url')

export function freshKeys(): DoorKeys {
  return { session: secret(), token: secret() }
}

/** What stands in the address of an opened document in the token's place: addresses are kept in a browser's history. */
export function linkKey({ token }: DoorKeys): string {
  return createHmac('sha256', token).update('documents').digest('base64url')
}

/** Compares in a time that tells nothing. */
export function same(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(a), digest(b))
}

const doorFile = (dataDir: string) => join(dataDir, 'door.json')

/**
 * The port and the keys of the last start on this folder. They are kept, readable by this user alone, so that a browser
 * that was let in goes on by itself when the app comes back; with the file removed every browser is shut out.
 */
export function readDoor(dataDir: string): KeptDoor | null {
  try {
    const kept = JSON.parse(readFileSync(doorFile(dataDir), 'utf8')) as Partial<KeptDoor>
    const { port, session, token } = kept
    const whole = Number.isInteger(port) && session?.length === 43 && token?.length === 43
    return whole ? (kept as KeptDoor) : null
  } catch {
    return null
  }
}

export function keepDoor(dataDir: string, door: KeptDoor): void {
  // A new file moved into place: an old one might be readable by others, and a crash leaves no half.
  const fresh = `${doorFile(dataDir)}.new`
  rmSync(fresh, { force: true })
  writeFileSync(fresh, JSON.stringify(door), { mode: 0o600 })
  renameSync(fresh, doorFile(dataDir))
}
