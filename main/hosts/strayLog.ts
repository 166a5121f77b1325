/** Logs and journals beside the database that are not its own: SQLite would take any that lies there for the shop's. */

import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { inspect } from '../store/backup/inspect.ts'
import { noteAtStart } from '../store/backup/readOver.ts'
import { diskRefusal } from '../store/diskWords.ts'
import { inPlainWords } from '../store/integrity.ts'
import { rollBack } from '../store/rollBack.ts'
import { journalOf, logOf } from './dataFolder.ts'

/** An app that closed leaves no log: one that lies there is another database's, and would spoil this one. */
export function layStrayLogAside(file: string, print: (words: string) => void): void {
  const log = logOf(file)
  if (!existsSync(file) || !holdsSomething(log)) return
  tell(
    file,
    say(
      'A log lay beside the database that the last start did not leave there. It was not read, and lies in {aside} now.',
      { aside: moveAside(log) },
    ),
    print,
  )
}

/**
 * A journal holds pages as they were, and whoever opens the database next writes them back over its own. This database
 * has one for the moment in which its mode is changed, and then no log; so one that lies there is its own only after a
 * crash, without a log, and where it makes a sound database of the shop `marked`: which is tried on a copy.
 */
export function layForeignJournalAside(
  file: string,
  { unclean, marked }: { unclean: boolean; marked: string | null },
  print: (words: string) => void,
): void {
  const journal = journalOf(file)
  if (!existsSync(file) || !holdsSomething(journal)) return
  if (unclean && !holdsSomething(logOf(file)) && isItsOwn(file, marked)) rollBack(file)
  else
    tell(
      file,
      say(
        "A journal that is another database's lay beside the database. It was not read, and lies in {aside} now.",
        { aside: moveAside(journal) },
      ),
      print,
    )
}

function isItsOwn(file: string, marked: string | null): boolean {
  const dir = join(dirname(file), 'set-aside', 'trial')
  const tried = join(dir, basename(file))
  try {
    return inPlainWords(file, () => {
      rmSync(dir, { recursive: true, force: true })
      mkdirSync(dir, { recursive: true, mode: 0o700 })
      copyFileSync(file, tried)
      copyFileSync(journalOf(file), journalOf(tried))
      rollBack(tried)
      const { fault, shopId } = inspect(tried)
      return fault === null && (marked === null || shopId === marked)
    })
  } catch (error) {
    if (error instanceof Refusal && error.code === 'database-damaged') return false
    throw diskRefusal(error, dir)
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}

const holdsSomething = (path: string) => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > 0

/**
 * After a crash the log belongs to the database, unless somebody put another one there: where the database is not
 * what it should be with the log and is without it, the log is laid aside. Answers whether it is as it should be now;
 * where it is not, nothing was moved. `asItShould` only reads, so that nothing of the log gets into the database; what
 * it cannot read for another reason than damage says nothing about the log, and is thrown.
 */
export function layForeignLogAside(
  file: string,
  asItShould: () => boolean,
  print: (words: string) => void,
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
  const aside = moveAside(log)
  let without = false
  try {
    without = is()
  } finally {
    if (!without) renameSync(aside, log)
  }
  if (!without) return false
  tell(
    file,
    say(
      "The log beside the database was another database's. It was not read, and lies in {aside} now; what was saved last before Lustrum ended may be missing. Look at today's jobs; if the right log is found, close Lustrum, put it back as {log} and start again.",
      { aside, log },
    ),
    print,
  )
  return true
}

function moveAside(path: string): string {
  const folder = join(dirname(path), 'set-aside')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const aside = join(folder, `${basename(path)}-${Math.floor(statSync(path).mtimeMs)}`)
  renameSync(path, aside)
  return aside
}

function tell(file: string, words: string, print: (words: string) => void): void {
  noteAtStart(file, words)
  print(words)
}
