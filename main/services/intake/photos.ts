/** Photos of a visit: taken in, shown, and taken out again as long as nobody has signed for them. */

import { dirname } from 'node:path'
import { say, word } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import { type MadePhoto, makePhoto } from '../../store/photos/makePhoto.ts'
import { keepOnly, keepPhoto, readPhoto } from '../../store/photos/photoFiles.ts'
import { act, type Desk } from '../desk/desk.ts'

/** More than anybody looks through. */
const mostOfJob = 100

const noPhoto = word('This photo is not there any more.')

const dataDirOf = (desk: Desk) => dirname(desk.store.source.file)

/** Keeps a photo of a visit. The file is on the disk before the row that names it. */
export async function addPhoto(
  desk: Desk,
  input: { jobId: string; name: string; bytes: Uint8Array },
): Promise<{ id: string }> {
  const { jobId } = input
  const name = checkNote(input.name.replaceAll(/[/\\]/g, ' '), 'name', 120) || 'photo'
  await assertRoom(desk, jobId)
  const photo = await makePhoto(input.bytes, name)
  arriving.add(photo)
  try {
    keepPhoto(dataDirOf(desk), photo)
    return await nameIt(desk, jobId, name, photo)
  } finally {
    arriving.delete(photo)
  }
}

/** Photos whose file is there while the row that names it is not saved yet. */
const arriving = new Set<MadePhoto>()

function nameIt(desk: Desk, jobId: string, name: string, photo: MadePhoto): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const { sha256, width, height } = photo
    const own = await tx.jobPhoto.findMany({ where: { jobId }, select: { id: true, sha256: true } })
    const same = own.find(each => each.sha256 === sha256)
    if (same) return { id: same.id }
    if (own.length >= mostOfJob) refuseFull(jobId)
    const data = { jobId, sha256, width, height, size: photo.bytes.length, name, at, who: desk.who }
    const { id } = await tx.jobPhoto.create({ data, select: { id: true } })
    audit({ act: 'photo kept', entity: 'job', entityId: jobId, detail: { photoId: id } })
    return { id }
  })
}

/** Asked before a large file is decoded for nothing. */
async function assertRoom(desk: Desk, jobId: string): Promise<void> {
  const { read } = desk.store
  found(
    await read.job.findUnique({ where: { id: jobId }, select: { id: true } }),
    { jobId },
    say('This job is not there; look at the board again.'),
  )
  if ((await read.jobPhoto.count({ where: { jobId } })) >= mostOfJob) refuseFull(jobId)
}

function refuseFull(jobId: string): never {
  return refuse(
    'too-many',
    { jobId },
    say('This visit has {mostOfJob} photos; take one out first.', { mostOfJob }),
  )
}

/** A photo as a file; `small` is the one for lists. */
export async function photoFile(desk: Desk, { id, small }: { id: string; small: boolean }) {
  const row = found(await desk.store.read.jobPhoto.findUnique({ where: { id } }), { id }, say(noPhoto))
  const bytes = found(await readPhoto(dataDirOf(desk), row.sha256, small), { id }, say(noPhoto))
  return { name: `${row.name.replace(/\.\w+$/, '')}.jpg`, type: 'image/jpeg', bytes }
}

/** Takes a photo out. Refused once it is part of what an owner has signed. */
export async function removePhoto(desk: Desk, { id }: { id: string }): Promise<void> {
  await act(desk, async (tx, audit) => {
    const row = found(await tx.jobPhoto.findUnique({ where: { id } }), { id }, say(noPhoto))
    const entries = await tx.intakeEntry.findMany({ where: { intake: { jobId: row.jobId } } })
    const signed = entries.some(({ content }) =>
      fromJson<{ photos: { id: string }[] }>(content).photos.some(photo => photo.id === id),
    )
    if (signed) refuse('signed', { id }, say('The owner has signed for this photo; it stays.'))
    await tx.jobPhoto.delete({ where: { id } })
    audit({ act: 'photo removed', entity: 'job', entityId: row.jobId, detail: { photoId: id } })
  })
  await sweepPhotos(desk)
}

/**
 * Takes out the files no row names: what a crash left, what was removed, what an erasure took. In a turn of its own among
 * the writers, so that a photo is either named by then or still arriving.
 */
export function sweepPhotos(desk: Desk): Promise<number> {
  return act(desk, async tx => {
    const rows = await tx.jobPhoto.findMany({ select: { sha256: true }, distinct: ['sha256'] })
    return keepOnly(dataDirOf(desk), new Set([...rows, ...arriving].map(({ sha256 }) => sha256)))
  })
}
