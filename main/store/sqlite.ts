import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'

/** What each kind of connection is told when it opens. */
const pragmas = {
  // What is taken out is taken out of the file too. A commit is on the disk before it is answered: in WAL mode SQLite's own default leaves the last to a power cut. On
  // macOS a plain flush stops at the disk's own memory; elsewhere the other two say nothing.
  write:
    'pragma secure_delete = on; pragma synchronous = full; pragma fullfsync = on; pragma checkpoint_fullfsync = on',
  read: 'pragma query_only = on',
  // A file that nobody uses yet does not wait for the disk; whoever keeps it must flush it. A table that is rebuilt is
  // gone for a moment, and the triggers that write to it must not mind.
  scratch: 'pragma synchronous = off; pragma legacy_alter_table = on',
}

/** Prisma's adapter on a database file; a second connection waits for a writer instead of failing at once. */
export function sqliteAdapter(
  file: string,
  purpose: keyof typeof pragmas,
  /** What else the connection is told when it opens. */
  script = '',
): PrismaBetterSqlite3 {
  const adapter = new PrismaBetterSqlite3({ url: `file:${file}`, timeout: 10_000 })
  const connect = adapter.connect.bind(adapter)
  adapter.connect = async () => {
    const connection = await connect()
    await connection.executeScript(pragmas[purpose])
    if (script) await connection.executeScript(script)
    return connection
  }
  return adapter
}

/**
 * Prisma's adapter on two connections to a file: whole transactions have one that writes, with `script` told when it opens,
 * and every other question the one that only reads, so that it never sees what another request has not finished. One
 * client is enough for both: its engine, with all it knows of the tables, takes 15 MB.
 */
export function pairedAdapter(file: string, script: string): PrismaBetterSqlite3 {
  const adapter = sqliteAdapter(file, 'read')
  const writing = sqliteAdapter(file, 'write', script)
  const connect = adapter.connect
  adapter.connect = async () => {
    const writer = await writing.connect()
    const reader = await connect()
    const close = reader.dispose.bind(reader)
    reader.startTransaction = level => writer.startTransaction(level)
    reader.dispose = async () => {
      await close()
      await writer.dispose()
    }
    return reader
  }
  return adapter
}
