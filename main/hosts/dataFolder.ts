import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { takeLock } from '../store/fileLock.ts'

/** The app that serves a data folder; one data folder has one app. */
export interface Running {
  host: 'desktop' | 'web'
  /** Where the web host is, once it serves. */
  address?: string
  /** The database was opened: its log lies beside it until it is closed. */
  opened?: boolean
}

export interface Claim {
  /** The last app on this folder did not close: it was killed, or the power failed. */
  unclean: boolean
  /** And had opened the database by then. */
  wasOpen: boolean
  /** Says that the database is open. */
  opened(): void
  /** Says where the web host is. */
  announce(address: string): void
  /**
   * Gives the folder back; the next start finds everything in order. Where a log is left, since something else still
   * reads the database, the mark stays: without it the next start would take the log for a stranger's.
   */
  release(): void
  /** Gives it back as it was found, after a start that came to nothing; what it saved all the same is its own. */
  refuse(): void
}

const lockFile = (dataDir: string) => join(dataDir, 'lock.db')
const markFile = (dataDir: string) => join(dataDir, 'running.json')

export const databaseFile = (dataDir: string) => join(dataDir, 'lustrum.db')
/** Where SQLite keeps what was saved last until it goes into the database. */
export const logOf = (file: string) => `${file}-wal`
/** Where it keeps the pages a change began from, in the mode that has no log. */
export const journalOf = (file: string) => `${file}-journal`

/**
 * Takes the data folder for this process, or returns null where another process has it. The lock ends with its
 * process; the mark beside it stays after a crash, and so tells the next start to look the database over.
 */
export function claimDataFolder(dataDir: string, host: Running['host']): Claim | null {
  let unlock: (() => void) | null
  try {
    mkdirSync(dataDir, { recursive: true, mode: 0o700 })
    keepToOneself(dataDir)
    unlock = takeLock(lockFile(dataDir))
  } catch (error) {
    throw new Refusal(
      'data-folder',
      '--data',
      dataDir,
      say(
        'The data folder {dataDir} cannot be written ({fault}): look at its rights, or name another with --data.',
        { dataDir, fault: (error as Error).message },
      ),
    )
  }
  if (!unlock) return null
  const found = readMark(dataDir)
  const unclean = existsSync(markFile(dataDir))
  let now: Running = { host }
  const mark = (more: Partial<Running>) => {
    now = { ...now, ...more }
    writeFileSync(markFile(dataDir), JSON.stringify(now), { mode: 0o600 })
  }
  mark({})
  const logIsLeft = () => (statSync(logOf(databaseFile(dataDir)), { throwIfNoEntry: false })?.size ?? 0) > 0
  return {
    unclean,
    wasOpen: unclean && (found?.opened ?? false),
    opened: () => mark({ opened: true }),
    announce: address => mark({ address }),
    release() {
      if (!logIsLeft()) rmSync(markFile(dataDir), { force: true })
      unlock()
    },
    refuse() {
      if (unclean) mark({ opened: found?.opened ?? false })
      else if (!(now.opened && logIsLeft())) rmSync(markFile(dataDir), { force: true })
      unlock()
    },
  }
}

/** What this program keeps in a data folder; anything else in it is not ours to close. */
const ours =
  /^(lustrum\.db.*|.+\.(json|log|lustrum-copy)|lock\.db.*|open\.html|before-migration|backups|set-aside|restore|window)$/

/** Customers' names, prices, passwords: readable by this user alone, also in a folder that was there before. */
function keepToOneself(dataDir: string): void {
  // For every file made from here on, SQLite's own beside the database among them.
  process.umask(0o077)
  const close = (path: string, depth: number) => {
    const folder = statSync(path).isDirectory()
    chmodSync(path, folder ? 0o700 : 0o600)
    if (folder && depth > 0)
      for (const name of readdirSync(path)) if (ours.test(name)) close(join(path, name), depth - 1)
  }
  close(dataDir, 2)
}

/** The app that now has the folder, if one has. */
export async function findRunning(dataDir: string): Promise<Running | null> {
  if (!existsSync(lockFile(dataDir))) return null
  const unlock = takeLock(lockFile(dataDir))
  if (!unlock) return readRunning(dataDir)
  unlock()
  return null
}

/**
 * The app that holds the folder, as its mark tells. A web host that has only just begun is waited for until it says
 * where it is, `patience` milliseconds at most.
 */
export async function readRunning(dataDir: string, patience = 15_000): Promise<Running | null> {
  for (let waited = 0; ; waited += 100) {
    const running = readMark(dataDir)
    if (running && (running.host === 'desktop' || running.address)) return running
    if (waited >= patience) return running
    await wait(100)
  }
}

/** The mark; null where there is none: the app has closed, or is between removing it and making it anew. */
function readMark(dataDir: string): Running | null {
  try {
    return JSON.parse(readFileSync(markFile(dataDir), 'utf8')) as Running
  } catch {
    return null
  }
}
