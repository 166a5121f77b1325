import { spawnSync } from 'node:child_process'
import {
  chmodSync,
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { claimDataFolder, databaseFile } from '../../main/hosts/dataFolder.ts'
import { openShop } from '../../main/hosts/openShop.ts'
import { copiesStanding } from '../../main/services/backup/standing.ts'
import { readOver } from '../../main/store/backup/readOver.ts'

import { add, makeShopFolder, names, type ShopFolder } from './shopFolder.ts'

let on: ShopFolder
beforeEach(() => {
  on = makeShopFolder()
})
afterEach(() => on.remove())

const markOf = (file: string) => join(file, '..', 'shop.json')

describe('a used folder', () => {
  it.each<[string, (file: string) => void]>([
    ['missing', file => rmSync(file)],
    ['empty', file => truncateSync(file, 0)],
    [
      'missing and whose mark is damaged',
      file => {
        rmSync(file)
        writeFileSync(markOf(file), '\0\0')
      },
    ],
    [
      'missing with its mark',
      file => {
        rmSync(file)
        rmSync(markOf(file))
      },
    ],
  ])('whose database is %s gets no new one, and is told which copy to restore', async (_, spoil) => {
    const { copy, shop } = await on.usedFolder()
    const file = databaseFile(on.dataDir)
    spoil(file)
    const before = existsSync(file) ? statSync(file).size : null
    for (const _attempt of ['first', 'second']) {
      const words = await on.refusal()
      expect(words).toMatch(/(is not there any more|is empty)\. Nothing was changed and no new one was begun/)
      expect(words).toContain(`--restore "${copy}"`)
      expect(existsSync(file) ? statSync(file).size : null).toBe(before)
    }
    expect(on.said).toEqual([])
    expect(await names(await on.start(copy))).toEqual(shop)
    expect(on.said.join('\n')).toMatch(
      /holds Ashdown Paint Care: .*\nHere now: .*\nAshdown Paint Care is restored\./,
    )
  })

  it('whose mark alone is lost opens, and is marked anew', async () => {
    const { shop } = await on.usedFolder()
    const mark = markOf(databaseFile(on.dataDir))
    const before = readFileSync(mark, 'utf8')
    rmSync(mark)
    expect(await names(await on.start())).toEqual(shop)
    expect(readFileSync(mark, 'utf8')).toBe(before)
  })

  it('with the database of another shop in it is not opened', async () => {
    await on.usedFolder()
    const mine = join(on.dir, 'mine.db')
    renameSync(databaseFile(on.dataDir), mine)
    const other = join(on.dir, 'other')
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
    copyFileSync(databaseFile(other), databaseFile(on.dataDir))
    expect(await on.refusal()).toMatch(/is another shop's than the one this folder belongs to/)
    copyFileSync(mine, databaseFile(on.dataDir))
    expect(await names(await on.start())).toContain('Aalto')
  })

  it.each<[string, (file: string) => void]>([
    ['header', file => overwrite(file, 0)],
    ['second page', file => overwrite(file, 4096)],
    ['end, cut off', file => truncateSync(file, statSync(file).size - 40_000)],
    ['whole, another program’s file', file => writeFileSync(file, Buffer.alloc(9000, 'x'))],
  ])('with a damaged %s is refused or warned of, and restored', async (_, spoil) => {
    const { copy, shop } = await on.usedFolder()
    const file = databaseFile(on.dataDir)
    spoil(file)
    const spoiled = readFileSync(file)
    const words = await on.start().then(
      async desk => {
        // Opened though damaged somewhere: read over in the background, and on.said on the first screen.
        await readOver(file)
        const [warning] = (await copiesStanding(desk)).warnings
        await on.running!.close()
        return warning!.words
      },
      error => {
        expect(readFileSync(file).equals(spoiled)).toBe(true)
        return (error as Error).message
      },
    )
    expect(words).toMatch(/is damaged .*[Rr]estore a copy/)
    expect(await names(await on.start(copy))).toEqual(shop)
  })
})

function overwrite(file: string, at: number): void {
  const bytes = readFileSync(file)
  bytes.fill(0xff, at, at + 4096)
  writeFileSync(file, bytes)
}

describe('a folder that goes while the app runs', () => {
  it.each<[string, () => void]>([
    ['deleted', () => rmSync(on.dataDir, { recursive: true })],
    ['unplugged', () => renameSync(on.dataDir, join(on.dir, 'elsewhere'))],
    [
      'its database replaced',
      () =>
        writeFileSync(`${databaseFile(on.dataDir)}.new`, '') ??
        renameSync(`${databaseFile(on.dataDir)}.new`, databaseFile(on.dataDir)),
    ],
  ])('%s: no save is answered yes, and the first screen says so', async (_, go) => {
    await on.usedFolder()
    const desk = await on.start()
    go()
    for (let i = 0; i < 10; i++)
      await expect(add(desk, `Lost ${i}`)).rejects.toMatchObject({
        code: 'database-gone',
        message: expect.stringMatching(/Nothing of this was saved\. Close Lustrum/),
      })
    expect((await copiesStanding(desk)).warnings[0]).toMatchObject({ about: 'data' })
  })

  it('plugged in again, opens with all that was saved', async () => {
    const { shop } = await on.usedFolder()
    await add(await on.start(), 'Before')
    renameSync(on.dataDir, join(on.dir, 'elsewhere'))
    await on.running!.close()
    renameSync(join(on.dir, 'elsewhere'), on.dataDir)
    expect(await names(await on.start())).toEqual(['Aalto', 'Before', ...shop.slice(1)].sort())
  })
})

it('a database that another program holds is refused in words, and nothing is moved', async () => {
  const { shop } = await on.usedFolder()
  const holder = new Database(databaseFile(on.dataDir))
  holder.pragma('locking_mode = exclusive')
  holder.exec('begin exclusive')
  expect(await on.refusal()).toMatch(/^Another program holds the database .*: close that program, then start/)
  holder.close()
  expect(await names(await on.start())).toEqual(shop)
  expect(on.said).toEqual([])
})

it('a start that was refused leaves no trace of not having been closed', async () => {
  await on.usedFolder()
  const file = databaseFile(on.dataDir)
  const database = new Database(file)
  database
    .prepare(
      "insert into _prisma_migrations (id, checksum, migration_name, started_at) values ('x', 'x', '29990101000000_later', 0)",
    )
    .run()
  database.close()
  expect(await on.refusal()).toMatch(/written by a newer version/)
  const again = new Database(file)
  again.prepare("delete from _prisma_migrations where id = 'x'").run()
  again.close()
  await on.start()
  expect(on.said).toEqual([])
})

// To root nothing is read-only; whoever owns the files has them made writable by the start.
describe.runIf(process.getuid?.() === 0)('a folder of another user', () => {
  const nobody = 65_534
  const program = fileURLToPath(new URL('./openOnce.ts', import.meta.url))
  const openAsNobody = () =>
    spawnSync(process.execPath, [program, on.dataDir], { encoding: 'utf8', uid: nobody, gid: nobody })
      .stdout.trim()
      .split('\n')
      .at(-1)

  it.each<[string, () => void]>([
    ['that may only be read', () => chmodSync(on.dataDir, 0o755)],
    ['whose database may only be read', () => chmodSync(on.dataDir, 0o777)],
  ])('%s is refused in words with the way out, and is left as it was', async (_, open) => {
    const { shop } = await on.usedFolder()
    chmodSync(on.dir, 0o755)
    for (const name of readdirSync(on.dataDir)) chmodSync(join(on.dataDir, name), 0o644)
    open()
    const before = readFileSync(databaseFile(on.dataDir))
    const there = readdirSync(on.dataDir)
    expect(openAsNobody()).toMatch(
      /^Refusal: The data folder .* cannot be written .*: look at its rights, or name another with --data\.$/,
    )
    expect(readdirSync(on.dataDir)).toEqual(there)
    expect(readFileSync(databaseFile(on.dataDir)).equals(before)).toBe(true)
    expect(await names(await on.start())).toEqual(shop)
  })
})
