import { cpSync, existsSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { copiesFolder, migrate } from '../../main/store/migrate.ts'
import { openStore } from '../../main/store/store.ts'
import { migrationsOf } from './migrations/versions.ts'
import { makeFolder } from './openDatabase.ts'

const all = readdirSync(migrationsDir).sort()
const now = { dir: migrationsDir }

function query<T>(file: string, sql: string): T[] {
  const database = new Database(file, { readonly: true })
  try {
    return database.prepare(sql).all() as T[]
  } finally {
    database.close()
  }
}

/** A database of the oldest version with one bay in it. */
async function makeOld(dir: string): Promise<string> {
  const file = join(dir, 'lustrum.db')
  await migrate(file, migrationsOf(dir, all.slice(0, 1)))
  const database = new Database(file)
  database.exec(`insert into Bay (id, name, position, capabilities) values ('b1', 'First', 1, '["wet"]')`)
  database.close()
  return file
}

describe('migrations', () => {
  it('make a new file, once', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    expect(await migrate(file, now)).toEqual(all)
    expect(await migrate(file, now)).toEqual([])
    expect(readdirSync(dir)).toEqual(['lustrum.db'])
  })

  it('bring an old file up to date at start, keep its rows, and keep a copy of it as it was', async () => {
    const dir = makeFolder()
    const file = await makeOld(dir)
    const store = await openStore(file, now)
    expect(await store.read.bay.findMany()).toMatchObject([
      { id: 'b1', name: 'First', capabilities: ['wet'] },
    ])
    await store.close()
    const applied = query<{ name: string }>(
      file,
      'select migration_name as name from _prisma_migrations order by name',
    )
    expect(applied.map(({ name }) => name)).toEqual(all)

    const copies = readdirSync(copiesFolder(dir))
    expect(copies).toEqual([`lustrum-before-${all[1]}.db`])
    const copy = join(copiesFolder(dir), copies[0]!)
    expect(query(copy, 'select name from Bay')).toEqual([{ name: 'First' }])
    expect(query(copy, 'select migration_name as name from _prisma_migrations')).toEqual([{ name: all[0] }])
  })

  it('take over what lay only in the write-ahead log, and leave none of it beside the new file', async () => {
    const dir = makeFolder()
    const file = await makeOld(dir)
    const writer = new Database(file)
    writer.pragma('journal_mode = WAL')
    writer.exec(`insert into Bay (id, name, position, capabilities) values ('b2', 'Second', 2, '[]')`)
    // As a killed process leaves it: both files, copied while the log is not yet folded in.
    const crashed = join(dir, 'crashed.db')
    for (const end of ['', '-wal']) cpSync(file + end, crashed + end)
    writer.close()
    expect(statSync(`${crashed}-wal`).size).toBeGreaterThan(0)
    await migrate(crashed, now)
    expect(query(crashed, 'select name from Bay order by position')).toEqual([
      { name: 'First' },
      { name: 'Second' },
    ])
    expect(existsSync(`${crashed}-wal`)).toBe(false)
  })

  it('leave the file as it was where one of them fails, and say so', async () => {
    const dir = makeFolder()
    const file = await makeOld(dir)
    const failing = migrationsOf(dir, all.slice(0, 1), {
      '29990101000000_good': 'create table extra (id integer)',
      '29990101000001_bad': 'create table extra (id integer)',
    })
    await expect(migrate(file, failing)).rejects.toMatchObject({
      code: 'migration-failed',
      message: expect.stringMatching(/could not be brought up to this version .* It was left as it was/),
    })
    expect(query(file, 'select name from Bay')).toEqual([{ name: 'First' }])
    expect(query(file, "select name from sqlite_master where name = 'extra'")).toEqual([])
    expect(readdirSync(dir).filter(name => name.includes('updating'))).toEqual([])
    // The version that wrote it, and one with the mistake put right, both open it.
    expect(await migrate(file, migrationsOf(dir, all.slice(0, 1)))).toEqual([])
    expect(await migrate(file, now)).toEqual(all.slice(1))
  })

  it('begin again after a crash in the middle of them', async () => {
    const dir = makeFolder()
    const file = await makeOld(dir)
    writeFileSync(`${file}.updating`, 'half a copy')
    writeFileSync(`${file}.updating-journal`, 'half a journal')
    await migrate(file, now)
    expect(query(file, 'select name from Bay')).toEqual([{ name: 'First' }])
    expect(readdirSync(dir).filter(name => name.includes('updating'))).toEqual([])
  })

  it('are refused for a database written by a newer version, in plain words, and it is not touched', async () => {
    const dir = makeFolder()
    const file = join(dir, 'lustrum.db')
    await migrate(file, migrationsOf(dir, all, { '29990101000000_later': 'create table later (id integer)' }))
    const before = statSync(file).mtimeMs
    await expect(openStore(file, now)).rejects.toMatchObject({
      code: 'database-newer',
      message: expect.stringMatching(/written by a newer version of Lustrum: install that version/),
    })
    expect(statSync(file).mtimeMs).toBe(before)
  })

  it("are refused for another program's database", async () => {
    const file = join(makeFolder(), 'lustrum.db')
    const other = new Database(file)
    other.exec('create table recipes (id integer)')
    other.close()
    await expect(openStore(file, now)).rejects.toMatchObject({ code: 'database-foreign' })
    expect(query(file, 'select name from sqlite_master')).toEqual([{ name: 'recipes' }])
  })

  it('treat an empty file as none', async () => {
    const file = join(makeFolder(), 'lustrum.db')
    writeFileSync(file, '')
    expect(await migrate(file, now)).toEqual(all)
  })
})
