import { existsSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'
import { beforeEach, describe, expect, it } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import { getIntake } from '../../../main/services/intake/intake.ts'
import { addPhoto, photoFile, removePhoto, sweepPhotos } from '../../../main/services/intake/photos.ts'
import { readPhoto } from '../../../main/store/photos/photoFiles.ts'
import { type IntakeDesk, intakeDesk } from './intakeDesk.ts'

let test: IntakeDesk
beforeEach(async () => {
  test = await intakeDesk()
})

const add = (bytes: Uint8Array, name = 'front.jpg') => addPhoto(test.desk, { jobId: test.jobId, name, bytes })
const plain = (background: string, width = 40, height = 30) =>
  sharp({ create: { width, height, channels: 3, background } })
    .jpeg()
    .toBuffer()

/** A PNG of one colour, one bit a pixel: of any size, and small as a file (PNG, W3C, 5 and 11.2). */
function blank(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data])
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
    length.writeUInt32BE(data.length)
    sum.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, sum])
  }
  const size = Buffer.alloc(13)
  size.writeUInt32BE(width, 0)
  size.writeUInt32BE(height, 4)
  size[8] = 1
  const rows = deflateSync(Buffer.alloc((1 + Math.ceil(width / 8)) * height))
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', size),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

describe('photos of a visit', () => {
  it('are a hundred at most, also where two windows add the last one', async () => {
    const { desk, jobId } = test
    const row = { jobId, width: 1, height: 1, size: 1, at: 0, who: 'desk' }
    await desk.store.transact({ at: desk.now(), who: 'desk' }, tx =>
      tx.jobPhoto.createMany({
        data: Array.from({ length: 99 }, (_, i) => ({
          ...row,
          sha256: `${i}`.padStart(64, '0'),
          name: `${i}`,
        })),
      }),
    )
    const both = await Promise.allSettled([add(await plain('#100')), add(await plain('#020'))])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(both.find(each => each.status === 'rejected')!.reason).toMatchObject({
      code: 'too-many',
      message: 'This visit has 100 photos; take one out first.',
    })
    // Asked before it is looked at: of a visit that is full no photo is decoded.
    await expect(add(Buffer.from('no photo at all'))).rejects.toMatchObject({ code: 'too-many' })
  })

  it('keep no path in their names, and have one where the file had none', async () => {
    await add(await plain('#100'), 'C:\\fakepath/../front 🚗.jpg')
    await add(await plain('#020'), '/')
    const { photos } = await getIntake(test.desk, { jobId: test.jobId })
    expect(photos.map(({ name }) => name)).toEqual(['C: fakepath .. front 🚗.jpg', 'photo'])
  })

  it('are in the history of the job, as they come and as they go', async () => {
    const photo = await add(await plain('#100'))
    await removePhoto(test.desk, photo)
    const lines = await test.desk.store.read.auditLine.findMany({
      where: { entity: 'job', entityId: test.jobId, act: { startsWith: 'photo' } },
      orderBy: { id: 'asc' },
    })
    expect(lines.map(({ act, detail }) => [act, detail])).toEqual([
      ['photo kept', { photoId: photo.id }],
      ['photo removed', { photoId: photo.id }],
    ])
  })

  it('stay where what no row names is swept out before their row is saved', async () => {
    const { promise: released, resolve: release } = Promise.withResolvers<void>()
    const folder = join(dirname(test.desk.store.source.file), 'files', 'photos')
    const kept = () => existsSync(folder) && readdirSync(folder).some(name => !/small|new/.test(name))
    const held = act(test.desk, () => released)
    const swept = sweepPhotos(test.desk)
    const added = plain('#123', 900, 700).then(bytes => add(bytes))
    while (!kept()) await setTimeout(5)
    release()
    await Promise.all([held, swept])
    const { id } = await added
    expect((await photoFile(test.desk, { id, small: false })).bytes.length).toBeGreaterThan(100)
    expect(readdirSync(folder)).toHaveLength(2)
  })

  it('of more pixels than any camera has are refused, however small the file', async () => {
    const bomb = blank(11_000, 11_000)
    expect(bomb.length).toBeLessThan(100_000)
    await expect(add(bomb)).rejects.toMatchObject({ code: 'photo-broken' })
    const { id } = await add(blank(400, 300))
    const { width, height } = await test.desk.store.read.jobPhoto.findUniqueOrThrow({ where: { id } })
    expect([width, height]).toEqual([400, 300])
  })

  it('that let light through stand on white', async () => {
    const clear = { r: 0, g: 0, b: 0, alpha: 0 }
    const { id } = await add(
      await sharp({ create: { width: 20, height: 20, channels: 4, background: clear } })
        .png()
        .toBuffer(),
    )
    const { dominant } = await sharp((await photoFile(test.desk, { id, small: false })).bytes).stats()
    expect(Math.min(dominant.r, dominant.g, dominant.b)).toBeGreaterThan(240)
  })

  it('whose file is gone are none, also in small', async () => {
    const folder = dirname(test.desk.store.source.file)
    expect(await readPhoto(folder, 'a'.repeat(64))).toBeNull()
    expect(await readPhoto(folder, 'a'.repeat(64), true)).toBeNull()
  })
})
