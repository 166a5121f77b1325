import Database from 'better-sqlite3'

/**
 * Takes a lock that one process can hold at a time and that the operating system lets go when the process ends,
 * however it ends: SQLite's own lock on a file made for it. Returns how to give it back, or null where another
 * process holds it.
 */
export function takeLock(file: string): (() => void) | null {
  const database = new Database(file, { timeout: 0 })
  try {
    database.exec('begin exclusive')
  } catch (error) {
    database.close()
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) return null
    throw error
  }
  return () => database.close()
}
