import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { copiesDir, listCopies, lookThrough, makeCopy, thinOut } from '../../../main/store/backup/copies.ts'
import { readContent, unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { beginPlace, carryTo, copiesIn } from '../../../main/store/backup/secondPlace.ts'
import { makeFolder } from '../openDatabase.ts'
import { addCustomer, makeFullStore } from './makeFullStore.ts'

const at = 29_604_030
const passphrase = 'four words of no meaning'

/** The names in a copy's database, straight from SQLite. */
async function namesIn(path: string, pass: string | null): Promise<string[]> {
  const dir = makeFolder()
  await unpackCopy(path, pass, dir)
  const database = new Database(join(dir, 'lustrum.db'), { readonly: true })
  try {
    return database.prepare('select name from Customer order by rowid').pluck().all() as string[]
  } finally {
    database.close()
  }
}

describe('a copy', () => {
  it.each([null, passphrase])('holds all that was saved while the app runs (passphrase: %s)', async pass => {
    const { store, file } = await makeFullStore(70)
    // The app is open, and most of this is still in its log alone.
    expect(statSync(`${file}-wal`).size).toBeGreaterThan(0)
    const copy = await makeCopy(file, { at, passphrase: pass })
    await addCustomer(store, 'Later')
    expect(await namesIn(copy.path, pass)).toEqual(Array.from({ length: 70 }, (_, i) => `Customer ${i + 1}`))
    expect(copy).toMatchObject({ madeAt: at, locked: pass !== null, shopId: store.source.shopId })
    expect(await listCopies(copiesDir(dirname(file)))).toEqual([copy])
    expect(readdirSync(copiesDir(dirname(file)))).toEqual([copy.name])
  })

  it('is of one moment, though others write all the while', async () => {
    const { store, file } = await makeFullStore(5)
    let writing = true
    const writer = (async () => {
      for (let i = 0; writing; i++) {
        await addCustomer(store, `While ${i}`)
        // As between two requests.
        await setImmediate()
      }
    })()
    const copy = await makeCopy(file, { at, passphrase: null }).finally(() => {
      writing = false
    })
    await writer
    const { content } = await readContent(copy.path, null)
    expect(content.tables.Customer).toBe(content.tables.Vehicle)
    expect(content.tables.Customer).toBe(content.tables.AuditLine)
    expect((await namesIn(copy.path, null)).length).toBe(content.tables.Customer)
  })

  it('tells what it holds without being unpacked', async () => {
    const { file } = await makeFullStore(3)
    const copy = await makeCopy(file, { at, passphrase: null })
    const { content } = await readContent(copy.path, null)
    expect(content.holdings).toEqual({
      shop: { name: 'Ashdown Paint Care', zone: 'America/New_York' },
      customers: 3,
      vehicles: 3,
      jobs: 0,
      lastJob: null,
      lastSavedAt: 29_600_000,
    })
    expect(content.schema.length).toBeGreaterThan(10)
  })

  it('takes along the files and keys beside the database, but no password, and nothing that is not the app’s', async () => {
    const { store, file } = await makeFullStore(1)
    const dataDir = dirname(file)
    store.secrets.set('mail', 'the password of the mail')
    mkdirSync(join(dataDir, 'files', '2026'), { recursive: true })
    writeFileSync(join(dataDir, 'files', '2026', 'sheet 1.pdf'), 'a data sheet')
    mkdirSync(join(dataDir, 'keys'))
    writeFileSync(join(dataDir, 'keys', 'own.pem'), 'a key')
    writeFileSync(join(dataDir, 'holiday.txt'), 'not ours')
    const copy = await makeCopy(file, { at, passphrase: null })
    const dir = makeFolder()
    await unpackCopy(copy.path, null, dir)
    const files = readdirSync(dir, { recursive: true }).map(String).sort()
    expect(files).toEqual([
      'files',
      'files/2026',
      'files/2026/sheet 1.pdf',
      'keys',
      'keys/own.pem',
      'lustrum.db',
    ])
    expect(readFileSync(join(dir, 'keys', 'own.pem'), 'utf8')).toBe('a key')
    for (const name of files.filter(each => statSync(join(dir, each)).isFile()))
      expect(readFileSync(join(dir, name)).includes('the password of the mail')).toBe(false)
  })

  it('locked, shows nothing of the shop and does not open with another passphrase', async () => {
    const { file } = await makeFullStore(1)
    const copy = await makeCopy(file, { at, passphrase })
    expect(readFileSync(copy.path).includes('Ashdown')).toBe(false)
    await expect(readContent(copy.path, null)).rejects.toMatchObject({ code: 'passphrase-wrong' })
    await expect(unpackCopy(copy.path, 'four words of meaning', null)).rejects.toMatchObject({
      code: 'passphrase-wrong',
      message: expect.stringContaining('another passphrase'),
    })
  })

  it.each([null, passphrase])(
    'damaged anywhere, says so and what could be read (passphrase: %s)',
    async pass => {
      const { file } = await makeFullStore(30)
      const copy = await makeCopy(file, { at, passphrase: pass })
      const whole = readFileSync(copy.path)
      const bad = join(makeFolder(), 'bad.lustrum-copy')
      const spoiled: [Buffer, RegExp][] = [
        [whole.subarray(0, whole.length - 100), /is damaged/],
        [
          Buffer.concat([whole.subarray(0, 12_000), Buffer.alloc(64, 0xff), whole.subarray(12_064)]),
          /is damaged/,
        ],
        [Buffer.concat([whole, Buffer.from('more')]), /is damaged/],
      ]
      for (const [bytes, words] of spoiled) {
        writeFileSync(bad, bytes)
        await expect(unpackCopy(bad, pass, null)).rejects.toMatchObject({
          code: 'copy-damaged',
          message: expect.stringMatching(words),
        })
      }
      for (const bytes of [Buffer.alloc(0), Buffer.from('LUSTRUM-COPY 1\n'), Buffer.alloc(9000, 'x')]) {
        writeFileSync(bad, bytes)
        await expect(unpackCopy(bad, pass, null)).rejects.toMatchObject({ code: 'copy-foreign' })
      }
    },
  )

  it('whose beginning cannot be read is listed with the others, in words', async () => {
    const { file } = await makeFullStore(1)
    const copy = await makeCopy(file, { at, passphrase })
    const whole = readFileSync(copy.path)
    const folder = copiesDir(dirname(file))
    const put = (name: string, bytes: Buffer) => writeFileSync(join(folder, `${name}.lustrum-copy`), bytes)
    const edited = (from: string, to: string) =>
      Buffer.from(whole.toString('latin1').replace(from, to), 'latin1')
    put('cut within its header', whole.subarray(0, 60))
    put('empty', Buffer.alloc(0))
    put('first letter', edited('L', 'M'))
    put('made at another time', edited(`${at}`, `${at - 1}`))
    put('of another shop', edited(copy.shopId.slice(0, 8), 'ffffffff'))
    put('opens at another cost', edited('"cost":', '"cost":1'))
    put('sum by another name', edited('"sum"', '"sun"'))
    put('text of another program', Buffer.from('Dear customers,\n'.repeat(400)))
    mkdirSync(join(folder, 'a folder.lustrum-copy'))
    const { copies, unread } = await lookThrough(folder)
    expect(copies).toEqual([copy])
    expect(unread.map(({ name }) => name.replace('.lustrum-copy', ''))).toEqual([
      'text of another program',
      'sum by another name',
      'opens at another cost',
      'of another shop',
      'made at another time',
      'first letter',
      'empty',
      'cut within its header',
    ])
    for (const { path, words } of unread)
      expect(words).toBe(`${path} is no copy of a shop, or its beginning is damaged: choose another copy.`)
  })

  it('made before its beginning was summed up is read as it was', async () => {
    const { file } = await makeFullStore(2)
    const copy = await makeCopy(file, { at, passphrase: null })
    const old = readFileSync(copy.path)
      .toString('latin1')
      .replace(/,"sum":"\w+"/, '')
    writeFileSync(copy.path, Buffer.from(old, 'latin1'))
    expect(await namesIn(copy.path, null)).toEqual(['Customer 1', 'Customer 2'])
  })

  it('made before photos lay beside it is read as it was, photos and all', async () => {
    const { file } = await makeFullStore(2)
    const copy = await makeCopy(file, { at, passphrase: null })
    const whole = readFileSync(copy.path)
    expect(whole.subarray(0, 15).toString()).toBe('LUSTRUM-COPY 2\n')
    writeFileSync(copy.path, Buffer.concat([Buffer.from('LUSTRUM-COPY 1\n'), whole.subarray(15)]))
    expect(await namesIn(copy.path, null)).toEqual(['Customer 1', 'Customer 2'])
  })

  it('is not made of a damaged database', async () => {
    const { store, file } = await makeFullStore(1)
    await store.close()
    const database = new Database(file)
    database.pragma('foreign_keys = off')
    database.exec("insert into BayClosure (id, bayId, fromAt, toAt) values ('c', 'no such bay', 1, 2)")
    database.close()
    await expect(makeCopy(file, { at, passphrase: null })).rejects.toMatchObject({
      code: 'database-damaged',
      message: expect.stringMatching(/^No copy was made.* belongs to no Bay.*copies made before are kept/),
    })
    expect(readdirSync(copiesDir(dirname(file)))).toEqual([])
  })

  it('of the minute in which another was made takes another name, is the newer, and is the one that is kept', async () => {
    const { file, store } = await makeFullStore(1)
    const folder = copiesDir(dirname(file))
    const first = await makeCopy(file, { at, passphrase: null })
    for (let nth = 2; nth <= 10; nth++) {
      await addCustomer(store, `Customer ${nth}`)
      await makeCopy(file, { at, passphrase: null })
    }
    expect(await namesIn(first.path, null)).toEqual(['Customer 1'])
    const copies = await listCopies(folder)
    expect(copies.map(({ name }) => name.match(/Z-.{8}-(\d+)\.lustrum-copy$/)?.[1] ?? '1')).toEqual(
      Array.from({ length: 10 }, (_, i) => `${10 - i}`),
    )
    expect(await thinOut(folder, store.source.shopId, at, 'UTC')).toBe(9)
    const [kept, ...others] = await listCopies(folder)
    expect(others).toEqual([])
    expect(await namesIn(kept!.path, null)).toHaveLength(10)
  })

  it('thinned out, goes; another shop’s, and those made before a restore, stay', async () => {
    const { file, store } = await makeFullStore(1)
    const folder = copiesDir(dirname(file))
    for (const back of [0, 10, 20, 3 * 1440, 3 * 1440 + 1])
      await makeCopy(file, { at: at - back, passphrase: null })
    await makeCopy(file, { at: at - 30, passphrase: null, beforeRestore: true })
    expect(await thinOut(folder, 'another', at, 'UTC')).toBe(0)
    expect(await thinOut(folder, store.source.shopId, at, 'UTC')).toBe(3)
    expect((await listCopies(folder)).map(({ madeAt }) => at - madeAt)).toEqual([0, 30, 3 * 1440])
  })
})

describe('the second place', () => {
  it('gets each copy, read back', async () => {
    const { file, store } = await makeFullStore(2)
    const place = makeFolder()
    await beginPlace(place, dirname(file))
    const copy = await makeCopy(file, { at, passphrase: null })
    await carryTo(place, copy)
    const [there] = await copiesIn(place, store.source.shopId)
    expect(there).toEqual({ ...copy, path: join(place, copy.name) })
    expect(await namesIn(join(place, copy.name), null)).toEqual(['Customer 1', 'Customer 2'])
    expect(existsSync(`${join(place, copy.name)}.part`)).toBe(false)
  })

  it('is refused within the data folder, as half a path, and where it is not there', async () => {
    const { file } = await makeFullStore(0)
    const dataDir = dirname(file)
    const refused = (words: RegExp) => ({
      code: 'place-bad',
      field: 'place',
      message: expect.stringMatching(words),
    })
    await expect(beginPlace(join(dataDir, 'backups'), dataDir)).rejects.toMatchObject(
      refused(/in the data folder itself/),
    )
    await expect(beginPlace('copies', dataDir)).rejects.toMatchObject(refused(/no whole path/))
    await expect(beginPlace(join(dataDir, '..', 'not there at all'), dataDir)).rejects.toMatchObject(
      refused(/is not there: plug the disk in/),
    )
    await expect(beginPlace(import.meta.filename, dataDir)).rejects.toMatchObject(refused(/is no folder/))
  })

  it('unplugged, is missed, even where an empty folder is left in its place', async () => {
    const { file, store } = await makeFullStore(1)
    const copy = await makeCopy(file, { at, passphrase: null })
    const place = makeFolder()
    await expect(carryTo(place, copy)).rejects.toMatchObject({
      message: expect.stringMatching(/^The second place .* is not there: plug/),
    })
    await expect(copiesIn(place, store.source.shopId)).rejects.toMatchObject({ code: 'disk' })
    expect(readdirSync(place)).toEqual([])
  })
})
