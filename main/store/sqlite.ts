import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'

/** Prisma's adapter on a database file; a second connection waits for a writer instead of failing at once. */
export function sqliteAdapter(file: string): PrismaBetterSqlite3 {
  return new PrismaBetterSqlite3({ url: `file:${file}`, timeout: 10_000 })
}
