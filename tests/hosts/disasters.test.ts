import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Refusal } from '../../main/domain/refusal.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder, databaseFile } from '../../main/hosts/dataFolder.ts'
import { openShop } from '../../main/hosts/openShop.ts'
import { layForeignLogAside } from '../../main/hosts/strayLog.ts'
import { copyAtOnce, ownCopies } from '../../main/services/backup/copying.ts'
import { saveCopiesSettings } from '../../main/services/backup/settings.ts'
import { copiesStanding } from '../../main/services/backup/standing.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { erasePerson } from '../../main/services/leaving/erase.ts'
import { saveCustomer } from '../../main/services/records/customers.ts'
import { readOver } from '../../main/store/backup/readOver.ts'
import { openStore } from '../../main/store/store.ts'
import { testShop } from '../services/testShop.ts'

let dir: string
let dataDir: string
let said: string[]
let running: { desk: Desk; close(): Promise<void>; kill(): Promise<void> } | null

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'lustrum-disaster-'))
  dataDir = join(dir, 'data')
  said = []
  running = null
})
afterEach(async () => {
  await running?.close().catch(() => {})
  rmSync(dir, { recursive: true, force: true })
})

/** A start on the folder, as both hosts make it. */
async function start(restore: string | null = null): Promise<Desk> {
  const claim = claimDataFolder(dataDir, 'web')!
  const desk = await openShop(claim, {
    dataDir,
    demo: false,
    restore,
    migrations: { dir: migrationsDir },
    say: words => said.push(words),
  })
  running = {
    desk,
    async close() {
      running = null
      await desk.store.close()
      claim.release()
    },
    // The log and the mark stay where they lie, as after a kill; this process lets go of both for the next start.
    async kill() {
      running = null
      const kept = mkdtempSync(join(dir, 'kept-'))
      const left = readdirSync(dataDir).filter(name => /^(lustrum\.db|running\.json)/.test(name))
      for (const name of left) copyFileSync(join(dataDir, name), join(kept, name))
      await desk.store.close()
      claim.release()
      for (const name of left) copyFileSync(join(kept, name), join(dataDir, name))
    },
  }
  return desk
}

/** A start that is refused: its words. */
async function refusal(): Promise<string> {
  const error = await start().catch((error: unknown) => error)
  expect(error).toMatchObject({ name: 'Refusal' })
  return (error as Error).message
}

const add = (desk: Desk, name: string) => saveCustomer(desk, { name, phone: null, email: null, note: '' })
const names = (desk: Desk) =>
  desk.store.read.customer.findMany({ orderBy: { name: 'asc' } }).then(rows => rows.map(({ name }) => name))

/** A shop with one customer and one copy; closed. */
async function usedFolder(): Promise<{ copy: string; shop: string[] }> {
  const desk = await start()
  await testShop(desk)
  await add(desk, 'Aalto')
  await copyAtOnce(desk)
  const [copy] = await ownCopies(desk)
  const shop = await names(desk)
  await running!.close()
  return { copy: copy!.path, shop }
}

describe('a used folder', () => {
  it.each<[string, (file: string) => void]>([
    ['missing', file => rmSync(file)],
    ['empty', file => truncateSync(file, 0)],
  ])('whose database is %s gets no new one, and is told which copy to restore', async (_, spoil) => {
    const { copy, shop } = await usedFolder()
    const file = databaseFile(dataDir)
    spoil(file)
    const before = existsSync(file) ? statSync(file).size : null
    for (const _attempt of ['first', 'second']) {
      const words = await refusal()
      expect(words).toMatch(/(is not there any more|is empty)\. Nothing was changed and no new one was begun/)
      expect(words).toContain(`--restore "${copy}"`)
      expect(existsSync(file) ? statSync(file).size : null).toBe(before)
    }
    expect(said).toEqual([])
    expect(await names(await start(copy))).toEqual(shop)
    expect(said.join('\n')).toMatch(
      /holds Ashdown Paint Care: .*\nHere now: .*\nAshdown Paint Care is restored\./,
    )
  })

  it('with the database of another shop in it is not opened', async () => {
    await usedFolder()
    const mine = join(dir, 'mine.db')
    renameSync(databaseFile(dataDir), mine)
    const other = join(dir, 'other')
    const claim = claimDataFolder(other, 'web')!
    const desk = await openShop(claim, {
      dataDir: other,
      demo: false,
      restore: null,
      migrations: { dir: migrationsDir },
      say: () => {},
    })
    await desk.store.close()
    claim.release()
    copyFileSync(databaseFile(other), databaseFile(dataDir))
    expect(await refusal()).toMatch(/is another shop's than the one this folder belongs to/)
    copyFileSync(mine, databaseFile(dataDir))
    expect(await names(await start())).toContain('Aalto')
  })

  it.each<[string, (file: string) => void]>([
    ['header', file => overwrite(file, 0)],
    ['second page', file => overwrite(file, 4096)],
    ['end, cut off', file => truncateSync(file, statSync(file).size - 40_000)],
    ['whole, another program’s file', file => writeFileSync(file, Buffer.alloc(9000, 'x'))],
  ])('with a damaged %s is refused or warned of, and restored', async (_, spoil) => {
    const { copy, shop } = await usedFolder()
    const file = databaseFile(dataDir)
    spoil(file)
    const spoiled = readFileSync(file)
    const words = await start().then(
      async desk => {
        // Opened though damaged somewhere: read over in the background, and said on the first screen.
        await readOver(file)
        const [warning] = (await copiesStanding(desk)).warnings
        await running!.close()
        return warning!.words
      },
      error => {
        expect(readFileSync(file).equals(spoiled)).toBe(true)
        return (error as Error).message
      },
    )
    expect(words).toMatch(/is damaged .*[Rr]estore a copy/)
    expect(await names(await start(copy))).toEqual(shop)
  })
})

function overwrite(file: string, at: number): void {
  const bytes = readFileSync(file)
  bytes.fill(0xff, at, at + 4096)
  writeFileSync(file, bytes)
}

describe('a person erased after a copy was made', () => {
  const erase = async (desk: Desk) => {
    const { id, version } = await desk.store.read.customer.findFirstOrThrow({ where: { name: 'Aalto' } })
    await erasePerson(desk, { id, version, accepted: true })
  }

  it('is erased again when that copy is restored, here and on another computer', async () => {
    const { copy } = await usedFolder()
    const place = join(dir, 'place')
    mkdirSync(place)
    const desk = await start()
    await saveCopiesSettings(desk, { place, version: 0 })
    // One made within the same minute takes its name.
    const older = join(place, 'older.lustrum-copy')
    copyFileSync(copy, older)
    await erase(desk)
    // Carried with the next copy.
    await copyAtOnce(desk)
    await running!.close()
    for (const folder of [dataDir, join(dir, 'another')]) {
      dataDir = folder
      said = []
      expect(await names(await start(older))).toContain('erased person')
      expect(said.at(-1)).toBe('Erased before, and back with an older copy, was erased again: 1.')
      await running!.close()
    }
    const list = readFileSync(join(place, 'lustrum-erased.json'), 'utf8')
    expect(Object.keys(JSON.parse(list))).toHaveLength(1)
    expect(list).not.toContain('Aalto')
  })

  it('is listed at the next start where the list was lost', async () => {
    await usedFolder()
    await erase(await start())
    await running!.close()
    const list = join(dataDir, 'backups', 'lustrum-erased.json')
    const before = readFileSync(list, 'utf8')
    writeFileSync(list, 'damaged')
    await start()
    expect(readFileSync(list, 'utf8')).toBe(before)
    expect(said).toEqual([])
  })
})

describe('a log', () => {
  it('missing after a crash is said, on the first screen too', async () => {
    await usedFolder()
    await add(await start(), 'Later')
    await running!.kill()
    rmSync(`${databaseFile(dataDir)}-wal`)
    rmSync(`${databaseFile(dataDir)}-shm`)
    const desk = await start()
    expect(said.at(-1)).toMatch(/The log .* is missing: the last changes may be missing too/)
    expect((await copiesStanding(desk)).warnings).toContainEqual({ about: 'data', words: said.at(-1) })
  })

  it.each<[string, (foreign: Database.Database) => void]>([
    ['another program’s', foreign => foreign.exec('create table Other (a text)')],
    // The pages of a larger database in the places of this one's.
    [
      'a larger',
      foreign => foreign.exec('create table Other (a); create table Third (b); create table Fourth (c)'),
    ],
  ])('of %s database after a crash is laid aside, and what was on the disk is there', async (_, fill) => {
    const { shop } = await usedFolder()
    await start()
    await running!.kill()
    const file = databaseFile(dataDir)
    const before = readFileSync(file)
    const foreign = join(dir, 'foreign.db')
    const database = new Database(foreign)
    database.pragma('journal_mode = wal')
    fill(database)
    for (let i = 0; i < 50; i++) database.prepare('insert into Other values (?)').run('x'.repeat(900))
    copyFileSync(`${foreign}-wal`, `${file}-wal`)
    database.close()
    rmSync(`${file}-shm`, { force: true })
    const desk = await start()
    expect(await names(desk)).toEqual(shop)
    const words = said.find(each => each.includes("another database's"))
    expect(words).toMatch(/It was not read, and lies in .*set-aside.* Look at today's jobs/)
    expect((await copiesStanding(desk)).warnings).toContainEqual({ about: 'data', words })
    await running!.close()
    expect(readFileSync(file).subarray(100, 4_000)).toEqual(before.subarray(100, 4_000))
  })

  it('left since something else still read the database is its own, with all that was saved', async () => {
    const { shop } = await usedFolder()
    const desk = await start()
    const reader = new Database(databaseFile(dataDir), { readonly: true })
    reader.exec('begin')
    reader.prepare('select count(*) from Customer').get()
    await add(desk, 'Later')
    await running!.close()
    reader.close()
    expect(await names(await start())).toEqual(['Aalto', 'Later', ...shop.slice(1)].sort())
    expect(said.join('\n')).not.toMatch(/set-aside/)
  })

  it('of a start that was refused after it had saved is its own', async () => {
    const { shop } = await usedFolder()
    const claim = claimDataFolder(dataDir, 'web')!
    const store = await openStore(databaseFile(dataDir), { dir: migrationsDir })
    claim.opened()
    await store.transact({ who: 'front desk', at: 0 }, tx => tx.customer.create({ data: { name: 'Later' } }))
    claim.refuse()
    // The process ends there, and nobody closes the database.
    const left = ['lustrum.db', 'lustrum.db-wal'].map(
      name => [name, readFileSync(join(dataDir, name))] as const,
    )
    await store.close()
    for (const [name, bytes] of left) writeFileSync(join(dataDir, name), bytes)
    expect(await names(await start())).toEqual(['Aalto', 'Later', ...shop.slice(1)].sort())
    expect(said.join('\n')).not.toMatch(/set-aside/)
  })

  it('stays where it lies when the database cannot be read for another reason than damage', async () => {
    await usedFolder()
    const file = databaseFile(dataDir)
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
    const { shop } = await usedFolder()
    writeFileSync(`${databaseFile(dataDir)}-wal`, Buffer.alloc(8192, 'x'))
    expect(await names(await start())).toEqual(shop)
    expect(said.at(-1)).toMatch(/It was not read/)
    expect(readdirSync(join(dataDir, 'set-aside'))).toHaveLength(1)
  })
})

describe('a folder that goes while the app runs', () => {
  it.each<[string, () => void]>([
    ['deleted', () => rmSync(dataDir, { recursive: true })],
    ['unplugged', () => renameSync(dataDir, join(dir, 'elsewhere'))],
    [
      'its database replaced',
      () =>
        writeFileSync(`${databaseFile(dataDir)}.new`, '') ??
        renameSync(`${databaseFile(dataDir)}.new`, databaseFile(dataDir)),
    ],
  ])('%s: no save is answered yes, and the first screen says so', async (_, go) => {
    await usedFolder()
    const desk = await start()
    go()
    for (let i = 0; i < 10; i++)
      await expect(add(desk, `Lost ${i}`)).rejects.toMatchObject({
        code: 'database-gone',
        message: expect.stringMatching(/Nothing of this was saved\. Close Lustrum/),
      })
    expect((await copiesStanding(desk)).warnings[0]).toMatchObject({ about: 'data' })
  })

  it('plugged in again, opens with all that was saved', async () => {
    const { shop } = await usedFolder()
    await add(await start(), 'Before')
    renameSync(dataDir, join(dir, 'elsewhere'))
    await running!.close()
    renameSync(join(dir, 'elsewhere'), dataDir)
    expect(await names(await start())).toEqual(['Aalto', 'Before', ...shop.slice(1)].sort())
  })
})

it('a database that another program holds is refused in words, and nothing is moved', async () => {
  const { shop } = await usedFolder()
  const holder = new Database(databaseFile(dataDir))
  holder.pragma('locking_mode = exclusive')
  holder.exec('begin exclusive')
  expect(await refusal()).toMatch(/^Another program holds the database .*: close that program, then start/)
  holder.close()
  expect(await names(await start())).toEqual(shop)
  expect(said).toEqual([])
})

it('a start that was refused leaves no trace of not having been closed', async () => {
  await usedFolder()
  const file = databaseFile(dataDir)
  const database = new Database(file)
  database
    .prepare(
      "insert into _prisma_migrations (id, checksum, migration_name, started_at) values ('x', 'x', '29990101000000_later', 0)",
    )
    .run()
  database.close()
  expect(await refusal()).toMatch(/written by a newer version/)
  const again = new Database(file)
  again.prepare("delete from _prisma_migrations where id = 'x'").run()
  again.close()
  await start()
  expect(said).toEqual([])
})
