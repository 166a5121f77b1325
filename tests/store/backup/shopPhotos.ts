import { createHash } from 'node:crypto'
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { photoPath } from '../../../main/store/photos/photoFiles.ts'
import type { Store, Tx } from '../../../main/store/store.ts'
import { stamp } from '../openDatabase.ts'

const at = 29_600_000

export interface ShopWithPhotos {
  store: Store
  dataDir: string
  /** The hashes of the photos it was given. */
  photos: string[]
}

/** A photo of a visit, kept as the app keeps one. Its bytes are of no picture: a copy does not look into them. */
export async function takePhoto({ store, dataDir, photos }: ShopWithPhotos): Promise<string> {
  const bytes = Buffer.alloc(1024 * 1024 * (1 + (photos.length % 3)), `photo ${photos.length}`)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  mkdirSync(dirname(photoPath(dataDir, sha256)), { recursive: true })
  writeFileSync(photoPath(dataDir, sha256), bytes)
  await store.transact(stamp, async (tx, audit) => {
    const jobId = await jobIn(tx)
    await tx.jobPhoto.create({
      data: { jobId, sha256, width: 1, height: 1, size: bytes.length, name: 'x', at, who: 'desk' },
    })
    audit({ act: 'photo kept', entity: 'job', entityId: jobId })
  })
  photos.push(sha256)
  return sha256
}

async function jobIn(tx: Tx): Promise<string> {
  const there = await tx.job.findFirst()
  if (there) return there.id
  const { id: vehicleId, customerId } = await tx.vehicle.findFirstOrThrow()
  const times = {
    createdAt: at,
    dropOffAt: at,
    handoverAt: at,
    promisedAt: at,
    plannedHandoverAt: at,
    safeAt: at,
    advisedAt: at,
  }
  return (await tx.job.create({ data: { number: 1, vehicleId, customerId, status: 'booked', ...times } })).id
}

export async function removePhoto({ store, dataDir }: ShopWithPhotos, sha256: string): Promise<void> {
  await store.transact(stamp, async (tx, audit) => {
    await tx.jobPhoto.deleteMany({ where: { sha256 } })
    audit({ act: 'photo removed', entity: 'job', entityId: 'x' })
  })
  rmSync(photoPath(dataDir, sha256))
}
