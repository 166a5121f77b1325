import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { copiesDir, listCopies, lookThrough, makeCopy, thinOut } from '../../../main/store/backup/copies.ts'
import { readPhotoList } from '../../../main/store/backup/copyFormat.ts'
import { poolsDir } from '../../../main/store/backup/photoPool.ts'
import { unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { layOut } from '../../../main/store/backup/restoring.ts'
import { beginPlace, carryTo } from '../../../main/store/backup/secondPlace.ts'
import { photoPath } from '../../../main/store/photos/photoFiles.ts'
import { makeFolder } from '../openDatabase.ts'
import { makeFullStore } from './makeFullStore.ts'
import { removePhoto, type ShopWithPhotos, takePhoto } from './shopPhotos.ts'

const at = 29_604_030
const passphrase = 'four words of no meaning'
const other = 'other words of no meaning'

/** A shop with so many photos of one visit, of 1 to 3 MB. */
async function shopWith(photos: number): Promise<ShopWithPhotos & { file: string; folder: string }> {
  const { store, file } = await makeFullStore(1)
  const dataDir = dirname(file)
  const shop = { store, file, dataDir, folder: copiesDir(dataDir), photos: [] }
  for (let i = 0; i < photos; i++) await takePhoto(shop)
  return shop
}
type Shop = Awaited<ReturnType<typeof shopWith>>

const copy = (shop: Shop, made = at, pass: string | null = null) =>
  makeCopy(shop.file, { at: made, passphrase: pass })
const pools = (folder: string) => readdirSync(poolsDir(folder))
const poolFiles = (folder: string) =>
  pools(folder)
    .flatMap(pool => readdirSync(join(poolsDir(folder), pool)))
    .sort()
const jpgs = (sha256s: readonly string[]) => sha256s.map(sha256 => `${sha256}.jpg`).sort()
const laidOut = (dataDir: string, sha256s: readonly string[]) =>
  sha256s.map(sha256 => {
    const path = photoPath(join(dataDir, 'restore'), sha256)
    return existsSync(path) && createHash('sha256').update(readFileSync(path)).digest('hex') === sha256
  })

describe('photos of copies', () => {
  it.each([null, passphrase])(
    'lie beside them once; a copy adds what is new (passphrase: %s)',
    async pass => {
      const shop = await shopWith(2)
      const first = await copy(shop, at, pass)
      expect(first.bytes).toBeLessThan(500_000)
      const before = poolFiles(shop.folder).map(
        name => statSync(join(poolsDir(shop.folder), pools(shop.folder)[0]!, name)).mtimeMs,
      )
      const third = await takePhoto(shop)
      const second = await copy(shop, at + 60, pass)
      const end = pass === null ? 'jpg' : 'sealed'
      expect(poolFiles(shop.folder).filter(name => name.endsWith(end))).toHaveLength(3)
      expect(
        poolFiles(shop.folder)
          .filter(name => !name.startsWith(third))
          .map(name => statSync(join(poolsDir(shop.folder), pools(shop.folder)[0]!, name)).mtimeMs),
      ).toEqual(before)
      expect(await readPhotoList(first.path)).toEqual([...shop.photos.slice(0, 2)].sort())
      expect(await readPhotoList(second.path)).toEqual([...shop.photos].sort())
      expect(await listCopies(shop.folder)).toEqual([second, first])
      const sealed = readFileSync(join(poolsDir(shop.folder), pools(shop.folder)[0]!, `${third}.${end}`))
      expect(sealed.includes('photo 2photo 2')).toBe(pass === null)
    },
  )

  it.each([null, passphrase])(
    'are laid out again with each copy that has them (passphrase: %s)',
    async pass => {
      const shop = await shopWith(3)
      const made = await copy(shop, at, pass)
      const away = makeFolder()
      expect(await layOut(away, made.path, pass)).toMatchObject({ photosMissing: 0 })
      expect(laidOut(away, shop.photos)).toEqual([true, true, true])
    },
  )

  it('gone or damaged beside it are looked for in the copies and the data here, and counted where they are nowhere', async () => {
    const shop = await shopWith(3)
    const made = await copy(shop)
    const [first, second, third] = shop.photos.map(sha256 =>
      join(poolsDir(shop.folder), pools(shop.folder)[0]!, `${sha256}.jpg`),
    )
    writeFileSync(first!, 'spoiled')
    rmSync(second!)
    rmSync(third!)
    rmSync(photoPath(shop.dataDir, shop.photos[2]!))
    expect(await layOut(shop.dataDir, made.path, null)).toMatchObject({ photosMissing: 1 })
    expect(laidOut(shop.dataDir, shop.photos)).toEqual([true, true, false])
    // Carried off without its photos, and opened where nothing of them is.
    const away = makeFolder()
    const lone = join(away, made.name)
    writeFileSync(lone, readFileSync(made.path))
    expect(await layOut(away, lone, null)).toMatchObject({ photosMissing: 3 })
    // Brought back without them to where the copies lie that have them still.
    const { photos } = made
    mkdirSync(join(poolsDir(copiesDir(away)), photos!.pool), { recursive: true })
    writeFileSync(
      join(poolsDir(copiesDir(away)), photos!.pool, `${shop.photos[1]}.jpg`),
      readFileSync(photoPath(shop.dataDir, shop.photos[1]!)),
    )
    expect(await layOut(away, lone, null)).toMatchObject({ photosMissing: 2 })
  })

  it('whose file is gone or not what its name says are not said to be in a copy', async () => {
    const shop = await shopWith(3)
    writeFileSync(photoPath(shop.dataDir, shop.photos[0]!), 'spoiled')
    rmSync(photoPath(shop.dataDir, shop.photos[1]!))
    const made = await copy(shop)
    expect(await readPhotoList(made.path)).toEqual([shop.photos[2]])
    expect(poolFiles(shop.folder)).toEqual(jpgs([shop.photos[2]!]))
  })

  it('go with the last copy that has them, and not before', async () => {
    const shop = await shopWith(2)
    const month = 40 * 1440
    const old = await copy(shop, at - month)
    await removePhoto(shop, shop.photos[0]!)
    for (const back of [20, 10, 0]) await copy(shop, at - back)
    const shopId = shop.store.source.shopId
    expect(await thinOut(shop.folder, shopId, at, 'UTC')).toBe(2)
    expect(poolFiles(shop.folder)).toEqual(jpgs(shop.photos))
    await unpackCopy(old.path, null, null)
    const away = makeFolder()
    expect(await layOut(away, old.path, null)).toMatchObject({ photosMissing: 0 })
    // Ten years on, the copy that had it goes, and nothing else does.
    const later = at + 10 * 366 * 1440
    await copy(shop, later)
    expect(await thinOut(shop.folder, shopId, later, 'UTC')).toBe(1)
    expect(poolFiles(shop.folder)).toEqual(jpgs([shop.photos[1]!]))
  })

  it('stay, all of them, where a copy cannot be read, or its list is not as it was', async () => {
    const shop = await shopWith(1)
    const [sha256] = shop.photos
    await copy(shop, at - 20)
    await removePhoto(shop, sha256!)
    await takePhoto(shop)
    for (const back of [10, 5, 0]) await copy(shop, at - back)
    const bad = join(shop.folder, 'bad.lustrum-copy')
    writeFileSync(bad, 'LUSTRUM-COPY 2\n')
    const shopId = shop.store.source.shopId
    expect(await thinOut(shop.folder, shopId, at, 'UTC')).toBe(3)
    expect(poolFiles(shop.folder)).toEqual(jpgs(shop.photos))
    rmSync(bad)
    const [newest] = await listCopies(shop.folder)
    const bytes = readFileSync(newest!.path)
    bytes[bytes.indexOf('\n', 20) + 3]! ^= 1
    writeFileSync(newest!.path, bytes)
    await expect(readPhotoList(newest!.path)).rejects.toMatchObject({ code: 'copy-foreign' })
    writeFileSync(
      join(shop.folder, 'another pool.lustrum-copy'),
      readFileSync(newest!.path, 'latin1').replace('-open"', '-oven"'),
      'latin1',
    )
    expect((await lookThrough(shop.folder)).unread.map(({ name }) => name)).toEqual([
      'another pool.lustrum-copy',
    ])
    rmSync(join(shop.folder, 'another pool.lustrum-copy'))
    await copy(shop, at - 30)
    expect(await thinOut(shop.folder, shopId, at, 'UTC')).toBe(1)
    expect(poolFiles(shop.folder)).toEqual(jpgs(shop.photos))
  })

  it('have a pool for each passphrase, which goes with the last of its copies', async () => {
    const shop = await shopWith(1)
    for (const [back, pass] of [
      [30, null],
      [20, passphrase],
      [15, passphrase],
      [10, other],
    ] as const)
      await copy(shop, at - back, pass)
    expect(pools(shop.folder)).toHaveLength(3)
    const copies = await listCopies(shop.folder)
    expect(copies[1]!.photos!.pool).toBe(copies[2]!.photos!.pool)
    expect(await layOut(makeFolder(), copies[1]!.path, passphrase)).toMatchObject({ photosMissing: 0 })
    expect(await thinOut(shop.folder, shop.store.source.shopId, at, 'UTC')).toBe(3)
    expect(pools(shop.folder)).toEqual([copies[0]!.photos!.pool])
    expect(await layOut(makeFolder(), copies[0]!.path, other)).toMatchObject({ photosMissing: 0 })
  })

  it('are carried to the second place before the copy, each once', async () => {
    const shop = await shopWith(2)
    const place = makeFolder()
    await beginPlace(place, shop.dataDir)
    await carryTo(place, await copy(shop, at - 60))
    expect(poolFiles(place)).toEqual(jpgs(shop.photos))
    await takePhoto(shop)
    const second = await copy(shop)
    const missing = join(poolsDir(shop.folder), second.photos!.pool, `${shop.photos[2]}.jpg`)
    const kept = readFileSync(missing)
    rmSync(missing)
    // Without a photo it has, a copy does not seem to be there.
    await expect(carryTo(place, second)).rejects.toMatchObject({ code: 'disk' })
    expect((await listCopies(place)).map(({ madeAt }) => madeAt)).toEqual([at - 60])
    writeFileSync(missing, kept)
    await carryTo(place, second)
    expect(poolFiles(place)).toEqual(jpgs(shop.photos))
    const away = makeFolder()
    expect(await layOut(away, join(place, second.name), null)).toMatchObject({ photosMissing: 0 })
  })
})
