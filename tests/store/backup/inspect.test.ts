import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { inspect } from '../../../main/store/backup/inspect.ts'
import { inspectBeside } from '../../../main/store/backup/inspectBeside.ts'
import { makeFolder } from '../openDatabase.ts'

/** A database of rows with an index that still holds one of them as it was before. */
function staleIndex(): string {
  const file = join(makeFolder(), 'some.db')
  const step = (...lines: string[]) => {
    const database = new Database(file)
    database.unsafeMode()
    database.pragma('writable_schema = on')
    for (const line of lines) database.exec(line)
    database.close()
  }
  step(
    'create table T (a)',
    'create index I on T (a)',
    'insert into T values (1), (2)',
    "create table Kept as select * from sqlite_schema where name = 'I'",
    "delete from sqlite_schema where name = 'I'",
  )
  step('update T set a = 3 where a = 2', 'insert into sqlite_schema select * from Kept')
  return file
}

it('looks through all, and leaves out what indexes name only where every byte was held against a hash', async () => {
  const file = staleIndex()
  expect(inspect(file).fault).toMatch(/index I/)
  expect((await inspectBeside(file)).fault).toMatch(/index I/)
  expect(inspect(file, 'hashed')).toMatchObject({ fault: null, tables: { T: 2 } })
  expect((await inspectBeside(file, 'hashed')).fault).toBeNull()
})

it.each(['all', 'hashed'] as const)('finds a page that is no page, looking at %s', async depth => {
  const file = staleIndex()
  const bytes = readFileSync(file)
  // The third page is the index's own: the first is the schema, the second the table.
  bytes.fill(0xff, 2 * 4096, 2 * 4096 + 200)
  writeFileSync(file, bytes)
  expect(inspect(file, depth).fault).toMatch(/page 3|[Tt]ree 3/)
  expect((await inspectBeside(file, depth)).fault).not.toBeNull()
})

it('finds a row that belongs to none', () => {
  const file = join(makeFolder(), 'some.db')
  const database = new Database(file)
  database.pragma('foreign_keys = off')
  database.exec('create table Bay (id primary key); create table Stay (bay references Bay (id))')
  database.exec('insert into Stay values (7)')
  database.close()
  for (const depth of ['all', 'hashed'] as const)
    expect(inspect(file, depth).fault).toBe('a row of Stay belongs to no Bay')
})
