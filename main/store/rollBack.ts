import Database from 'better-sqlite3'

/** Takes back what a journal beside the database says was cut off: SQLite does so with the first question of a connection that may write. */
export function rollBack(file: string): void {
  const database = new Database(file)
  try {
    database.prepare('select count(*) from sqlite_master').get()
  } finally {
    database.close()
  }
}
