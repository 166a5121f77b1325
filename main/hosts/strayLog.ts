/** Logs beside the database that are not its own: SQLite would read any that lies there as the newest of the shop. */
import { existsSync, mkdirSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { Refusal } from '../domain/refusal.ts'
import { noteAtStart } from '../store/backup/readOver.ts'
import { logOf } from './dataFolder.ts'

/** An app that closed leaves no log: one that lies there is another database's, and would spoil this one. */
export function layStrayLogAside(file: string, say: (words: string) => void): void {
  const log = logOf(file)
  if (!existsSync(file) || !existsSync(log) || statSync(log).size === 0) return
  tell(
    file,
    `A log lay beside the database that the last start did not leave there. It was not read, and lies in ${moveAside(file)} now.`,
    say,
  )
}

/**
 * After a crash the log belongs to the database, unless somebody put another one there: where the database is not
 * what it should be with the log and is without it, the log is laid aside. Answers whether it is as it should be now;
 * where it is not, nothing was moved. `asItShould` only reads, so that nothing of the log gets into the database; what
 * it cannot read for another reason than damage says nothing about the log, and is thrown.
 */
export function layForeignLogAside(
  file: string,
  asItShould: () => boolean,
  say: (words: string) => void,
): boolean {
  const is = () => {
    try {
      return asItShould()
    } catch (error) {
      if (error instanceof Refusal && error.code === 'database-damaged') return false
      throw error
    }
  }
  if (is()) return true
  const log = logOf(file)
  if (!existsSync(log)) return false
  const aside = moveAside(file)
  let without = false
  try {
    without = is()
  } finally {
    if (!without) renameSync(aside, log)
  }
  if (!without) return false
  tell(
    file,
    `The log beside the database was another database's. It was not read, and lies in ${aside} now; what was saved last before Lustrum ended may be missing. Look at today's jobs; if the right log is found, close Lustrum, put it back as ${log} and start again.`,
    say,
  )
  return true
}

function moveAside(file: string): string {
  const log = logOf(file)
  const folder = join(file, '..', 'set-aside')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const aside = join(folder, `lustrum.db-wal-${Math.floor(statSync(log).mtimeMs)}`)
  renameSync(log, aside)
  return aside
}

function tell(file: string, words: string, say: (words: string) => void): void {
  noteAtStart(file, words)
  say(words)
}
