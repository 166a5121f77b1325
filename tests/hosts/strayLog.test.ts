import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Refusal } from '../../main/domain/refusal.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder, databaseFile, journalOf } from '../../main/hosts/dataFolder.ts'
import { layForeignLogAside } from '../../main/hosts/strayLog.ts'
import { copiesStanding } from '../../main/services/backup/standing.ts'
import { openStore } from '../../main/store/store.ts'

import { add, makeShopFolder, names, type ShopFolder } from './shopFolder.ts'

let on: ShopFolder
beforeEach(() => {
  on = makeShopFolder()
})
afterEach(() => on.remove())

describe('a log', () => {
  it('missing after a crash is on.said, on the first screen too', async () => {
    await on.usedFolder()
    await add(await on.start(), 'Later')
    await on.running!.kill()
    rmSync(`${databaseFile(on.dataDir)}-wal`)
    rmSync(`${databaseFile(on.dataDir)}-shm`)
    const desk = await on.start()
    expect(on.said.at(-1)).toMatch(/The log .* is missing: the last changes may be missing too/)
    expect((await copiesStanding(desk)).warnings).toContainEqual({ about: 'data', words: on.said.at(-1) })
  })

  it.each<[string, (foreign: Database.Database) => void]>([
    ['another program’s', foreign => foreign.exec('create table Other (a text)')],
    // The pages of a larger database in the places of this one's.
    [
      'a larger',
      foreign => foreign.exec('create table Other (a); create table Third (b); create table Fourth (c)'),
    ],
  ])('of %s database after a crash is laid aside, and what was on the disk is there', async (_, fill) => {
    const { shop } = await on.usedFolder()
    await on.start()
    await on.running!.kill()
    const file = databaseFile(on.dataDir)
    const before = readFileSync(file)
    const foreign = join(on.dir, 'foreign.db')
    const database = new Database(foreign)
    database.pragma('journal_mode = wal')
    fill(database)
    for (let i = 0; i < 50; i++) database.prepare('insert into Other values (?)').run('x'.repeat(900))
    copyFileSync(`${foreign}-wal`, `${file}-wal`)
    database.close()
    rmSync(`${file}-shm`, { force: true })
    const desk = await on.start()
    expect(await names(desk)).toEqual(shop)
    const words = on.said.find(each => each.includes("another database's"))
    expect(words).toMatch(/It was not read, and lies in .*set-aside.* Look at today's jobs/)
    expect((await copiesStanding(desk)).warnings).toContainEqual({ about: 'data', words })
    await on.running!.close()
    expect(readFileSync(file).subarray(100, 4_000)).toEqual(before.subarray(100, 4_000))
  })

  it('left since something else still read the database is its own, with all that was saved', async () => {
    const { shop } = await on.usedFolder()
    const desk = await on.start()
    const reader = new Database(databaseFile(on.dataDir), { readonly: true })
    reader.exec('begin')
    reader.prepare('select count(*) from Customer').get()
    await add(desk, 'Later')
    await on.running!.close()
    reader.close()
    expect(await names(await on.start())).toEqual(['Aalto', 'Later', ...shop.slice(1)].sort())
    expect(on.said.join('\n')).not.toMatch(/set-aside/)
  })

  it('of a start that was refused after it had saved is its own', async () => {
    const { shop } = await on.usedFolder()
    const claim = claimDataFolder(on.dataDir, 'web')!
    const store = await openStore(databaseFile(on.dataDir), { dir: migrationsDir })
    claim.opened()
    await store.transact({ who: 'front desk', at: 0 }, tx => tx.customer.create({ data: { name: 'Later' } }))
    claim.refuse()
    // The process ends there, and nobody closes the database.
    const left = ['lustrum.db', 'lustrum.db-wal'].map(
      name => [name, readFileSync(join(on.dataDir, name))] as const,
    )
    await store.close()
    for (const [name, bytes] of left) writeFileSync(join(on.dataDir, name), bytes)
    expect(await names(await on.start())).toEqual(['Aalto', 'Later', ...shop.slice(1)].sort())
    expect(on.said.join('\n')).not.toMatch(/set-aside/)
  })

  it('stays where it lies when the database cannot be read for another reason than damage', async () => {
    await on.usedFolder()
    const file = databaseFile(on.dataDir)
    writeFileSync(`${file}-wal`, 'what was saved last')
    for (const code of ['database-busy', 'database-unreachable']) {
      // Held by another program when it was looked at first, and let go by then.
      const answers = [new Refusal(code, 'database', file, 'held'), true]
      const asItShould = () => {
        const answer = answers.shift()!
        if (answer === true) return true
        throw answer
      }
      expect(() => layForeignLogAside(file, asItShould, () => {})).toThrow('held')
      expect(readFileSync(`${file}-wal`, 'utf8')).toBe('what was saved last')
    }
    const damaged = new Refusal('database-damaged', 'database', file, 'damaged')
    const answers = [damaged, new Error('the disk is gone')]
    const asItShould = () => {
      throw answers.shift()
    }
    expect(() => layForeignLogAside(file, asItShould, () => {})).toThrow('the disk is gone')
    expect(readFileSync(`${file}-wal`, 'utf8')).toBe('what was saved last')
  })

  it('that was left by no start is laid aside, not read', async () => {
    const { shop } = await on.usedFolder()
    writeFileSync(`${databaseFile(on.dataDir)}-wal`, Buffer.alloc(8192, 'x'))
    expect(await names(await on.start())).toEqual(shop)
    expect(on.said.at(-1)).toMatch(/It was not read/)
    expect(readdirSync(join(on.dataDir, 'set-aside'))).toHaveLength(1)
  })
})

describe('a journal', () => {
  /** Begins to rewrite a database in the mode that has a journal, and takes it and its journal as a crash leaves them. */
  function halfWritten(file: string, rewrite: string): { database: Buffer; journal: Buffer } {
    const database = new Database(file)
    database.pragma('journal_mode = delete')
    // So that pages go to the disk before the end.
    database.pragma('cache_size = 1')
    database.pragma('cache_spill = 1')
    database.exec('begin')
    database.exec(rewrite)
    const left = { database: readFileSync(file), journal: readFileSync(journalOf(file)) }
    database.exec('rollback')
    database.close()
    return left
  }

  /** A database of another program in half a change, with more pages than the shop's has. */
  function foreignJournal(): Buffer {
    const foreign = join(on.dir, 'foreign.db')
    const database = new Database(foreign)
    database.exec('create table Other (a text)')
    const insert = database.prepare('insert into Other values (?)')
    database.transaction(() => {
      for (let i = 0; i < 1_000; i++) insert.run('x'.repeat(900))
    })()
    database.close()
    return halfWritten(foreign, "update Other set a = 'y' || a").journal
  }

  it('that was left by no start is laid aside, not written into the database', async () => {
    const { shop } = await on.usedFolder()
    const file = databaseFile(on.dataDir)
    const before = readFileSync(file)
    writeFileSync(journalOf(file), foreignJournal())
    expect(await names(await on.start())).toEqual(shop)
    expect(on.said.at(-1)).toMatch(/journal that is another database's .* not read, and lies in .*set-aside/)
    await on.running!.close()
    expect(readFileSync(file).subarray(100, 4_000)).toEqual(before.subarray(100, 4_000))
    expect(readdirSync(join(on.dataDir, 'set-aside'))).toHaveLength(1)
  })

  it.each(['with a log', 'without a log'])(
    'of another database after a crash is laid aside, %s beside it',
    async logs => {
      const { shop } = await on.usedFolder()
      const desk = await on.start()
      const later = logs === 'with a log' ? ['Later'] : []
      for (const name of later) await add(desk, name)
      await on.running!.kill()
      const file = databaseFile(on.dataDir)
      if (later.length === 0) for (const end of ['-wal', '-shm']) rmSync(file + end)
      writeFileSync(journalOf(file), foreignJournal())
      expect(await names(await on.start())).toEqual([...shop, ...later].sort())
      expect(on.said.join('\n')).toMatch(/journal that is another database's/)
      expect(readdirSync(join(on.dataDir, 'set-aside'))).toHaveLength(1)
    },
  )

  it('of its own after a crash takes back what was half written', async () => {
    const { shop } = await on.usedFolder()
    await on.start()
    await on.running!.kill()
    const file = databaseFile(on.dataDir)
    const { database, journal } = halfWritten(
      file,
      `with recursive Line(i) as (select 1 union all select i + 1 from Line where i < 2000)
       insert into AuditLine (id, at, who, act, entity, entityId, detail)
       select 'line-' || i, 1, 'test', 'noted', 'job', i, hex(zeroblob(500)) from Line;
       update Customer set name = name || '${'y'.repeat(3_000)}'`,
    )
    writeFileSync(file, database)
    writeFileSync(journalOf(file), journal)
    rmSync(`${file}-wal`, { force: true })
    expect(await names(await on.start())).toEqual(shop)
    expect(on.said.join('\n')).not.toMatch(/set-aside/)
    await on.running!.close()
    expect(readdirSync(join(on.dataDir, 'set-aside'))).toEqual([])
  })

  it('is tried as long as the disk has room for it: where it has none, nothing is moved', async () => {
    await on.usedFolder()
    await on.start()
    await on.running!.kill()
    const file = databaseFile(on.dataDir)
    for (const end of ['-wal', '-shm']) rmSync(file + end)
    writeFileSync(journalOf(file), 'a journal')
    writeFileSync(join(on.dataDir, 'set-aside'), 'in the way')
    expect(await on.refusal()).toMatch(/set-aside.* is not there/)
    expect(readFileSync(journalOf(file), 'utf8')).toBe('a journal')
  })
})
