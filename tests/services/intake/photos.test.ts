import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { signIntake } from '../../../main/services/intake/intake.ts'
import { addPhoto, photoFile, removePhoto, sweepPhotos } from '../../../main/services/intake/photos.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { personFile } from '../../../main/services/leaving/person.ts'
import { makeCopy } from '../../../main/store/backup/copies.ts'
import { readPhotoList } from '../../../main/store/backup/copyFormat.ts'
import { turnsDuring } from '../../turns.ts'
import { job } from '../cure/coatedCar.ts'
import { unzip } from '../leaving/unzip.ts'
import { filledIntake, type IntakeDesk, intakeDesk, signature } from './intakeDesk.ts'

/** A grey picture with a red half, lying on its side as a camera writes it, with the place it was taken at. */
function camera(width: number, height: number): Promise<Buffer> {
  const red = { create: { width: width / 2, height, channels: 3 as const, background: '#c00' } }
  return sharp({ create: { width, height, channels: 3, background: '#888' } })
    .composite([{ input: red, left: 0, top: 0 }])
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD0: { Make: 'Quillcam' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 3230/100', GPSLongitudeRef: 'W' },
    })
    .jpeg()
    .toBuffer()
}

let large: Buffer
let small: Buffer
beforeAll(async () => {
  large = await camera(8_000, 6_000)
  small = await camera(600, 400)
})

let test: IntakeDesk
beforeEach(async () => {
  test = await intakeDesk()
})

const add = (bytes: Uint8Array, name = 'front.jpg') => addPhoto(test.desk, { jobId: test.jobId, name, bytes })
const dataDir = () => dirname(test.desk.store.source.file)
const folder = () => join(dataDir(), 'files', 'photos')
const files = () => (existsSync(folder()) ? readdirSync(folder()).sort() : [])

describe('a photo', () => {
  it('of 48 megapixels is taken while others are served, upright and at a size that is kept', async () => {
    expect(large.length).toBeGreaterThan(100_000)
    let id = ''
    const turns = await turnsDuring(add(large).then(photo => (id = photo.id)))
    // Decoded here it would be a second and more in which nobody gets one; the steps around it give a few hundred.
    expect(turns).toBeGreaterThan(10_000)
    const row = await test.desk.store.read.jobPhoto.findUniqueOrThrow({ where: { id } })
    expect([row.width, row.height]).toEqual([3072, 4096])
    const { data, info } = await sharp((await photoFile(test.desk, { id, small: false })).bytes)
      .raw()
      .toBuffer({ resolveWithObject: true })
    // Orientation 6 turns it a quarter clockwise: what was left is on top now (EXIF 2.3, table 4.6.4 A).
    const at = (x: number, y: number) => data[(y * info.width + x) * 3 + 1]!
    expect(at(1500, 100)).toBeLessThan(40)
    expect(at(1500, 4000)).toBeGreaterThan(100)
    const tiny = await sharp((await photoFile(test.desk, { id, small: true })).bytes).metadata()
    expect([tiny.width, tiny.height]).toEqual([360, 480])
  })

  it('keeps nothing of where it was taken, in no byte of the file', async () => {
    expect(small.includes('Exif')).toBe(true)
    expect(small.includes('Quillcam')).toBe(true)
    const { id } = await add(small)
    for (const which of [false, true]) {
      const kept = Buffer.from((await photoFile(test.desk, { id, small: which })).bytes)
      for (const trace of ['Exif', 'GPS', 'Quillcam', 'http']) expect(kept.includes(trace)).toBe(false)
      const { exif, xmp, iptc, orientation } = await sharp(kept).metadata()
      expect([exif, xmp, iptc, orientation]).toEqual([undefined, undefined, undefined, undefined])
    }
  })

  it('is named by its bytes, kept once, and goes along with every copy', async () => {
    const first = await add(small)
    expect(await add(small, 'again.jpg')).toEqual(first)
    const { sha256 } = await test.desk.store.read.jobPhoto.findUniqueOrThrow({ where: { id: first.id } })
    expect(files()).toEqual([`${sha256}-small.jpg`, `${sha256}.jpg`])
    const { path } = await makeCopy(test.desk.store.source.file, { at: 29_600_000, passphrase: null })
    expect(await readPhotoList(path)).toEqual([sha256])
  })

  it('has its small one made anew where only the photo itself came back with a copy', async () => {
    const { id } = await add(large)
    const before = (await photoFile(test.desk, { id, small: true })).bytes
    for (const name of files().filter(each => each.includes('small'))) rmSync(join(folder(), name))
    expect((await photoFile(test.desk, { id, small: true })).bytes).toEqual(before)
    expect(files()).toHaveLength(2)
  })

  it.each<[string, string, () => Uint8Array]>([
    ['a script called .jpg', 'photo-type', () => Buffer.from('#!/bin/sh\nrm -rf /\n')],
    ['a page', 'photo-type', () => Buffer.from('<svg onload="alert(1)"/>')],
    ['one cut off', 'photo-broken', () => small.subarray(0, small.length * 0.6)],
    ['a head and nothing behind it', 'photo-broken', () => Buffer.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])],
    ['an empty file', 'photo-size', () => new Uint8Array()],
    ['one of 41 MB', 'photo-size', () => new Uint8Array(41 * 1024 * 1024)],
  ])('%s is refused, and leaves no file', async (_, code, bytes) => {
    await expect(add(bytes())).rejects.toMatchObject({ code, field: 'photo' })
    expect(files()).toEqual([])
  })

  it('is taken out, unless the owner has signed for it', async () => {
    const { desk, jobId } = test
    const gone = await add(small)
    await removePhoto(desk, gone)
    expect(files()).toEqual([])
    await expect(photoFile(desk, { ...gone, small: true })).rejects.toMatchObject({ code: 'missing' })
    const kept = await add(small)
    await signIntake(desk, {
      jobId,
      version: 0,
      draft: await filledIntake(test),
      ownerName: 'Ines Vale',
      signature,
    })
    await expect(removePhoto(desk, kept)).rejects.toMatchObject({ code: 'signed' })
    await expect(
      add(small).then(() => addPhoto(desk, { jobId: 'none', name: 'x', bytes: small })),
    ).rejects.toMatchObject({ field: 'jobId' })
  })

  it('that a crash left without its row is swept out; one that is arriving is not', async () => {
    const { id } = await add(small)
    const other = await camera(300, 300)
    writeFileSync(join(folder(), `${'a'.repeat(64)}.jpg`), 'left over')
    const [added] = await Promise.all([
      add(other, 'other.jpg'),
      sweepPhotos(test.desk),
      sweepPhotos(test.desk),
    ])
    expect(await sweepPhotos(test.desk)).toBe(0)
    expect(files()).toHaveLength(4)
    for (const each of [id, added.id])
      expect((await photoFile(test.desk, { id: each, small: false })).bytes.length).toBeGreaterThan(100)
  })

  it('is in the file a person is given, and gone from the disk once they are erased', async () => {
    const { desk, jobId } = test
    await add(small)
    await signIntake(desk, {
      jobId,
      version: 0,
      draft: await filledIntake(test, { belongings: 'a hat of Ines Vale' }),
      ownerName: 'Ines Vale',
      signature,
    })
    const { customerId, version } = await desk.store.read.job.findUniqueOrThrow({ where: { id: jobId } })
    const packed = unzip(Buffer.from((await personFile(desk, { customerId })).bytes))
    expect([...packed.keys()]).toEqual(
      expect.arrayContaining(['files/1 front.jpg', 'tables/intake-entries.csv']),
    )
    await cancelJob(desk, {
      id: jobId,
      version: (await job(desk, jobId)).version ?? version,
      reason: 'moved away',
    })
    const customer = await desk.store.read.customer.findUniqueOrThrow({ where: { id: customerId } })
    await erasePerson(desk, { id: customerId, version: customer.version, accepted: true })
    expect(files()).toEqual([])
    const entry = await desk.store.read.intakeEntry.findFirstOrThrow()
    expect([entry.ownerName, entry.signature]).toEqual(['erased person', 'erased person'])
    expect(JSON.stringify(entry.content)).not.toMatch(/Ines|KFR/)
    expect(readFileSync(desk.store.source.file).includes('Ines Vale')).toBe(false)
  })
})
