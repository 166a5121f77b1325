import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, expect, it } from 'vitest'
import { copyAtOnce, ownCopies } from '../../../main/services/backup/copying.ts'
import { tryCopy } from '../../../main/services/backup/drill.ts'
import { dataDirOf } from '../../../main/services/backup/settings.ts'
import { copiesStanding } from '../../../main/services/backup/standing.ts'
import { inspect } from '../../../main/store/backup/inspect.ts'
import { unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { writeCopy } from '../../../main/store/backup/writeCopy.ts'
import { seeded } from '../../bench/bookedShop.ts'
import { takePhoto } from '../../store/backup/shopPhotos.ts'
import { damages } from '../../store/disasters/damaged.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let copy: string
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  await testShop(desk)
  await copyAtOnce(desk)
  copy = (await ownCopies(desk))[0]!.path
  desk.setNow('2026-04-16T15:00:00Z')
})

/** What the drill says, on the first screen too where the copy does not open. */
async function drill(): Promise<string> {
  await tryCopy(desk)
  const { drill, warnings } = await copiesStanding(desk)
  const said = warnings.some(({ about, words }) => about === 'copies' && words === drill)
  expect(said).toBe(!/ opens: /.test(drill ?? ''))
  expect(
    readdirSync(join(dataDirOf(desk), 'backups')).filter(name => !name.endsWith('.lustrum-copy')),
  ).toEqual([])
  return drill ?? ''
}

/** Packs the copy anew, whole in itself, with another database in it or another list of its rows. */
async function repack(change: { spoil?: (file: string) => void; customers?: number }): Promise<void> {
  const dir = join(dataDirOf(desk), 'unpacked')
  const { header, content } = await unpackCopy(copy, null, dir)
  const path = join(dir, 'lustrum.db')
  const { schema, tables, holdings } = content
  change.spoil?.(path)
  await writeCopy(copy, {
    shopId: header.shopId,
    madeAt: header.madeAt,
    content: {
      schema,
      holdings,
      tables: { ...tables, Customer: tables.Customer! + (change.customers ?? 0) },
    },
    files: [{ name: 'lustrum.db', path }],
    photos: null,
    passphrase: null,
  })
  rmSync(dir, { recursive: true })
}

it('opens a sound copy, and counts what is in it', async () => {
  expect(await drill()).toBe('The copy of Wed 15 April at 10:00 opens: 0 jobs, 4 cars, 4 customers.')
})

it('takes the newest copy that is a day old', async () => {
  await copyAtOnce(desk)
  expect(await drill()).toContain('The copy of Wed 15 April at 10:00 opens')
})

it('finds rows missing that the copy lists', async () => {
  await repack({ customers: 1 })
  expect(await drill()).toBe(
    'The copy of Wed 15 April at 10:00 does not open: Customer has not the rows it should.',
  )
})

it('finds a damaged page, though the copy is whole as a file', async () => {
  await repack({ spoil: damages['page in the middle']! })
  expect(await drill()).toMatch(/^The copy of Wed 15 April at 10:00 does not open/)
})

it('finds a byte flipped anywhere', async () => {
  const whole = readFileSync(copy)
  const random = seeded(20_260_415)
  const places = Array.from({ length: 24 }, (_, i) => Math.floor(((i + random()) / 24) * whole.length))
  const passed: number[] = []
  const head = Array.from({ length: whole.indexOf('}\n') + 2 }, (_, at) => at)
  for (const place of [...head, ...places, whole.length - 1]) {
    const spoiled = Buffer.from(whole)
    spoiled[place]! ^= 1 << Math.floor(random() * 8)
    writeFileSync(copy, spoiled)
    // In its beginning it is said without a drill, which has then no copy to try.
    const said = (await copiesStanding(desk)).warnings.some(({ words }) => /beginning is damaged/.test(words))
    if (said !== head.includes(place) || (!said && / opens: /.test(await drill()))) passed.push(place)
  }
  expect(passed).toEqual([])
})

it('reads the photos beside the copy, and has those that are spoiled laid there anew', async () => {
  const dataDir = dataDirOf(desk)
  const shop = { store: desk.store, dataDir, photos: [] as string[] }
  const [first, second] = [await takePhoto(shop), await takePhoto(shop)]
  await copyAtOnce(desk)
  desk.setNow('2026-04-17T16:00:00Z')
  const tried = async () => {
    await tryCopy(desk)
    return (await copiesStanding(desk)).drill
  }
  expect(await tried()).toMatch(/^The copy of Thu 16 April at 11:00 opens: /)
  const pools = join(dataDir, 'backups', 'photos')
  const photoAt = (sha256: string) => join(pools, readdirSync(pools)[0]!, `${sha256}.jpg`)
  writeFileSync(photoAt(first), 'spoiled')
  rmSync(photoAt(second))
  expect(await tried()).toBe(
    'The copy of Thu 16 April at 11:00 opens, but 2 of its photos are damaged or gone. The next copy adds them anew where they are still here.',
  )
  await copyAtOnce(desk)
  expect(await tried()).toMatch(/ opens: /)
})

it('leaves the copy as it is', async () => {
  const before = join(dataDirOf(desk), 'before')
  copyFileSync(copy, before)
  await drill()
  expect(readFileSync(copy).equals(readFileSync(before))).toBe(true)
  expect(inspect(desk.store.source.file).fault).toBeNull()
})
