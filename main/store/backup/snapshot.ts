import Database from 'better-sqlite3'
import { flush } from '../wholeFile.ts'

/** Pages copied between two looks at what else there is to do: a few milliseconds of work. */
const pagesAtOnce = 500

/**
 * Copies a database that is in use, as it is at this moment, into one file that needs nothing beside it. By SQLite's
 * online backup, on a connection of its own that holds on to what it saw first: others go on writing and do not make it
 * begin anew.
 */
export async function takeSnapshot(file: string, target: string): Promise<void> {
  const source = new Database(file, { readonly: true, fileMustExist: true, timeout: 10_000 })
  try {
    source.exec('begin')
    source.prepare('select count(*) from sqlite_master').get()
    await source.backup(target, { progress: () => pagesAtOnce })
  } finally {
    source.close()
  }
  const copy = new Database(target)
  try {
    // As a file of its own it has no log; one that lay beside it would be taken for its own.
    copy.pragma('journal_mode = delete')
  } finally {
    copy.close()
  }
  flush(target)
}
