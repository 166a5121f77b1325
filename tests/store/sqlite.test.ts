import { expect, it } from 'vitest'
import { pairedAdapter, sqliteAdapter } from '../../main/store/sqlite.ts'
import { openTestStore } from './openDatabase.ts'

/** What a connection for this purpose was told when it opened. */
async function told(
  purpose: Parameters<typeof sqliteAdapter>[1],
  names: readonly string[],
): Promise<unknown[]> {
  const { file } = await openTestStore()
  const connection = await sqliteAdapter(file, purpose).connect()
  const values: unknown[] = []
  for (const name of names) {
    const { rows } = await connection.queryRaw({ sql: `pragma ${name}`, args: [], argTypes: [] })
    values.push(Number(rows[0]?.[0]))
  }
  await connection.dispose()
  return values
}

it('waits at each commit until it is on the disk, on macOS past the disk’s own memory, and leaves no trace of what went', async () => {
  // SQLite's documentation of PRAGMA synchronous: 2 is FULL, 3 EXTRA.
  const names = ['synchronous', 'fullfsync', 'checkpoint_fullfsync', 'secure_delete']
  expect(await told('write', names)).toEqual([2, 1, 1, 1])
})

it('holds a connection that reads to it', async () => {
  expect(await told('read', ['query_only'])).toEqual([1])
})

it('gives a transaction the connection that writes, and shows nothing of it to other questions before its end', async () => {
  const { file } = await openTestStore()
  const connection = await pairedAdapter(file, 'create temp table "told" ("it" integer)').connect()
  const sql = (text: string) => ({ sql: text, args: [], argTypes: [] })
  const count = async () =>
    Number((await connection.queryRaw(sql('select count(*) from "Customer"'))).rows[0]?.[0])
  const act = await connection.startTransaction()
  await act.executeRaw(sql(`insert into "Customer" ("id", "name") values ('x', 'Ada')`))
  await act.executeRaw(sql('insert into "told" values (1)'))
  expect(await count()).toBe(0)
  await act.executeRaw(sql('commit'))
  await act.commit()
  expect(await count()).toBe(1)
  await expect(connection.executeRaw(sql('delete from "Customer"'))).rejects.toThrow()
  await connection.dispose()
})
