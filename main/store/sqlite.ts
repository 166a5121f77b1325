import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'

/**
 * Prisma's adapter on a database file. A second connection waits for a writer instead of failing at once, and a
 * commit is on the disk before it is answered: in WAL mode SQLite's own default leaves the last ones to a power cut.
 */
export function sqliteAdapter(file: string): PrismaBetterSqlite3 {
  const adapter = new PrismaBetterSqlite3({ url: `file:${file}`, timeout: 10_000 })
  const connect = adapter.connect.bind(adapter)
  adapter.connect = async () => {
    const connection = await connect()
    await connection.executeScript('pragma synchronous = full')
    return connection
  }
  return adapter
}
