import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'

/**
 * Prisma's adapter on a database file. A second connection waits for a writer instead of failing at once, and a
 * commit is on the disk before it is answered: in WAL mode SQLite's own default leaves the last ones to a power cut.
 * A `scratch` file does not wait for the disk; whoever keeps it must flush it.
 */
export function sqliteAdapter(file: string, { scratch = false } = {}): PrismaBetterSqlite3 {
  const adapter = new PrismaBetterSqlite3({ url: `file:${file}`, timeout: 10_000 })
  const connect = adapter.connect.bind(adapter)
  adapter.connect = async () => {
    const connection = await connect()
    await connection.executeScript(`pragma synchronous = ${scratch ? 'off' : 'full'}`)
    return connection
  }
  return adapter
}
