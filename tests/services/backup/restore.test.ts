import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { copyAtOnce, ownCopies } from '../../../main/services/backup/copying.ts'
import {
  cancelRestore,
  copiesHere,
  findCopies,
  lookIntoCopy,
  stageRestore,
} from '../../../main/services/backup/restore.ts'
import { dataDirOf, saveCopiesSettings } from '../../../main/services/backup/settings.ts'
import { copiesStanding } from '../../../main/services/backup/standing.ts'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { approveAll, retryMessage } from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { getUpkeepSettings } from '../../../main/services/upkeep/settings.ts'
import { listCopies, makeCopy } from '../../../main/store/backup/copies.ts'
import { readContent } from '../../../main/store/backup/readCopy.ts'
import { finishRestore } from '../../../main/store/backup/restoring.ts'
import { migrate } from '../../../main/store/migrate.ts'
import { readPhoto } from '../../../main/store/photos/photoFiles.ts'
import { openStore } from '../../../main/store/store.ts'
import { startMailServer, type TestMailServer } from '../../outbox/mailServer.ts'
import { takePhoto } from '../../store/backup/shopPhotos.ts'
import { migrationsOf } from '../../store/migrations/versions.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { approvedBatch, change, duePlan, reminderDesk } from '../reminders/reminderDesk.ts'
import type { TestShop } from '../testShop.ts'
import { agree } from '../upkeep/coatedCar.ts'

let desk: TestDesk
let place: string
let shop: TestShop
let server: TestMailServer
/** Another desk, on an installation where nothing has been set up. */
let empty: TestDesk
const passphrase = 'four words of no meaning'

beforeEach(async () => {
  place = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
  server = await startMailServer({})
  ;({ desk, shop } = await reminderDesk(server.port))
  empty = await makeDesk('2026-04-16T14:00:00Z')
})
afterEach(async () => {
  await desk.close()
  await empty.close()
  await server.close()
  rmSync(place, { recursive: true, force: true })
})

/** What the next start does, and the desk it opens; the folder is the old desk's to remove. */
async function restart(old: TestDesk): Promise<TestDesk> {
  const { file } = old.store.source
  await old.store.close()
  await finishRestore(file, dataDirOf(old), { at: old.now(), passphrase: null })
  return { ...old, store: await openStore(file, { dir: migrationsDir }) }
}

const names = async ({ store }: TestDesk) =>
  (await store.read.customer.findMany({ orderBy: { name: 'asc' } })).map(({ name }) => name)

describe('a shop restored on an empty installation', () => {
  it('from a copy that an older version made is brought up to date, all its rows with it', async () => {
    const all = readdirSync(migrationsDir)
      .filter(name => /^\d/.test(name))
      .sort()
    const older = join(place, 'older.db')
    await migrate(older, migrationsOf(place, all.slice(0, -1)))
    const database = new Database(older)
    database.exec("insert into Customer (id, name) values ('c', 'From Before')")
    database.close()
    const { path } = await makeCopy(older, { at: 29_604_030, passphrase: null })
    expect((await readContent(path, null)).content.schema).toEqual(all.slice(0, -1))
    await stageRestore(empty, { path, passphrase: null })
    empty = await restart(empty)
    expect(await names(empty)).toEqual(['From Before'])
    const restored = new Database(empty.store.source.file, { readonly: true })
    expect(
      restored.prepare('select migration_name from _prisma_migrations order by 1').pluck().all(),
    ).toEqual(all)
    restored.close()
  })

  it('is there after one start, from the second place, locked as it was', async () => {
    await saveCopiesSettings(desk, { place, passphrase, version: 0 })
    await copyAtOnce(desk)
    const [copy] = (await findCopies({ path: `"${place}" ` })).copies
    const input = { path: copy!.path, passphrase }
    await expect(lookIntoCopy(empty, { ...input, passphrase: null })).rejects.toMatchObject({
      code: 'passphrase-wrong',
    })
    const { lines } = await lookIntoCopy(empty, input)
    expect(lines).toEqual([expect.stringMatching(/^In the copy: .*, \d+ jobs?, /), 'Here now: no shop.'])
    await stageRestore(empty, input)
    expect((await copiesHere(empty)).ready).toMatchObject({ shopId: desk.store.source.shopId })
    empty = await restart(empty)
    expect(await names(empty)).toEqual(await names(desk))
    expect((await copiesHere(empty)).ready).toBeNull()
    expect(existsSync(join(dataDirOf(empty), 'restore'))).toBe(false)
  })

  it('has its photos again; those nowhere to be found are told beforehand and counted', async () => {
    const shop = { store: desk.store, dataDir: dataDirOf(desk), photos: [] as string[] }
    for (let i = 0; i < 3; i++) await takePhoto(shop)
    await saveCopiesSettings(desk, { place, version: 0 })
    await copyAtOnce(desk)
    const [copy] = (await findCopies({ path: place })).copies
    const input = { path: copy!.path, passphrase: null }
    const lines = async () => (await lookIntoCopy(empty, input)).lines.slice(1)
    expect(await lines()).toEqual(['3 photos lie beside it.', 'Here now: no shop.'])
    const pool = join(place, 'photos', readdirSync(join(place, 'photos'))[0]!)
    rmSync(join(pool, `${shop.photos[1]}.jpg`))
    expect(await lines()).toEqual([
      expect.stringMatching(/^Of its 3 photos 1 do not lie beside it: put the folder “photos”/),
      'Here now: no shop.',
    ])
    expect(await stageRestore(empty, input)).toMatchObject({ photosMissing: 1 })
    empty = await restart(empty)
    const back = await Promise.all(shop.photos.map(sha256 => readPhoto(dataDirOf(empty), sha256)))
    expect(back.map(bytes => bytes?.length ?? 0)).toEqual([1024 * 1024, 0, 3 * 1024 * 1024])
  })

  it('is what it was where nobody starts again, or thinks better of it', async () => {
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    await stageRestore(empty, { path: copy!.path, passphrase: null })
    cancelRestore(empty)
    empty = await restart(empty)
    expect(await names(empty)).toEqual([])
  })
})

describe('a copy put in the place of a shop', () => {
  it('is asked about first, beside what is here, and what was here is kept', async () => {
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    const before = await names(desk)
    await desk.store.transact({ who: 'x', at: desk.now() }, tx =>
      tx.customer.create({ data: { name: 'Zuletzt' } }),
    )
    const input = { path: copy!.path, passphrase: null }
    await expect(stageRestore(desk, input)).rejects.toMatchObject({
      code: 'restores',
      message: expect.stringMatching(/kept as a copy first\.\nIn the copy: .*\nHere now: /),
    })
    await stageRestore(desk, { ...input, accepted: true })
    desk = await restart(desk)
    expect(await names(desk)).toEqual(before)
    const kept = (await copiesHere(desk)).copies.find(each => each.beforeRestore)
    await stageRestore(desk, { path: kept!.path, passphrase: null, accepted: true })
    desk = await restart(desk)
    expect(await names(desk)).toContain('Zuletzt')
  })

  it('takes the place of a damaged one too, whose files are laid aside', async () => {
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    const before = await names(desk)
    await stageRestore(desk, { path: copy!.path, passphrase: null, accepted: true })
    const { file } = desk.store.source
    await desk.store.close()
    writeFileSync(file, Buffer.alloc(8192, 'x'))
    const restored = await finishRestore(file, dataDirOf(desk), { at: 1, passphrase: null })
    expect(readdirSync(restored!.keptAs!)).toEqual(['lustrum.db'])
    expect(readFileSync(join(restored!.keptAs!, 'lustrum.db'))[0]).toBe('x'.charCodeAt(0))
    desk = { ...desk, store: await openStore(file, { dir: migrationsDir }) }
    expect(await names(desk)).toEqual(before)
  })

  it('damaged itself, replaces nothing and leaves nothing behind', async () => {
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    const bytes = readFileSync(copy!.path)
    writeFileSync(copy!.path, bytes.subarray(0, bytes.length - 50))
    await expect(
      stageRestore(desk, { path: copy!.path, passphrase: null, accepted: true }),
    ).rejects.toMatchObject({
      code: 'copy-damaged',
      message: expect.stringMatching(/list of what it holds could be read.*Nothing was changed/),
    })
    expect((await copiesHere(desk)).ready).toBeNull()
    expect(existsSync(join(dataDirOf(desk), 'restore'))).toBe(false)
  })

  it('whose beginning is damaged is listed where it lies, and said on the first screen', async () => {
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    const spoiled = readFileSync(copy!.path)
    spoiled[3]! ^= 1
    const bad = copy!.path.replace('.lustrum-copy', '-too.lustrum-copy')
    writeFileSync(bad, spoiled)
    writeFileSync(join(place, 'only.lustrum-copy'), spoiled)
    const words = expect.stringMatching(/^.*its beginning is damaged: choose another copy\.$/)
    const here = await copiesHere(desk)
    expect(here.copies).toHaveLength(1)
    expect(here.unread).toEqual([{ path: bad, name: basename(bad), words }])
    expect((await findCopies({ path: place })).unread).toMatchObject([{ name: 'only.lustrum-copy', words }])
    expect((await findCopies({ path: copy!.path })).unread).toEqual([])
    const said = async () => (await copiesStanding(desk)).warnings.map(warning => warning.words)
    expect(await said()).toEqual([expect.stringContaining(`${bad} is no copy of a shop`)])
    expect(await said()).toEqual([expect.not.stringContaining('more')])
    writeFileSync(bad.replace('-too', '-three'), spoiled)
    expect(await said()).toEqual([expect.stringContaining('The same goes for 1 more.')])
  })

  it('is not looked for where there is none', async () => {
    await expect(findCopies({ path: place })).rejects.toMatchObject({ code: 'path-bad' })
    await expect(findCopies({ path: join(place, 'gone') })).rejects.toMatchObject({ code: 'disk' })
    expect(await listCopies(place)).toEqual([])
  })
})

describe('reminders after a restore', () => {
  it('that waited in the copy and went out since do not go out again: each is asked about', async () => {
    const [vehicleId] = shop.vehicles as [string]
    await agree(desk, vehicleId)
    await duePlan(desk, vehicleId)
    await approvedBatch(desk)
    await change(desk, { automatic: true })
    await copyAtOnce(desk)
    const [copy] = await ownCopies(desk)
    await runOutbox(desk)
    expect(server.letters).toHaveLength(1)

    await stageRestore(empty, { path: copy!.path, passphrase: null })
    empty = await restart(empty)
    empty.setNow('2026-04-17T14:00:00Z')
    await upkeepTick(empty)
    await approveAll(empty)
    await upkeepTick(empty)
    expect(server.letters).toHaveLength(1)
    expect((await batch(empty)).messages.map(({ state }) => state)).toEqual(['failed'])
    expect((await getUpkeepSettings(empty)).automatic).toBe(false)
    const held = async () =>
      (await copiesStanding(empty)).warnings
        .filter(({ about }) => about === 'restored')
        .map(({ words }) => words)
    expect(await held()).toEqual([
      expect.stringMatching(
        /^This shop was restored from the copy of Wed 15 April at 10:00\. 1 reminder waiting then may have gone out since: .* switch that on again/,
      ),
    ])

    await change(empty, { automatic: true })
    const [message] = (await batch(empty)).messages
    await retryMessage(empty, message!)
    expect(await held()).toEqual([])
    await runOutbox(empty)
    expect(server.letters).toHaveLength(2)
  })
})
