import { copyFile, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, isAbsolute, join, relative, resolve } from 'node:path'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { diskRefusal, onDisk } from '../diskWords.ts'
import { type CopyFile, listCopies } from './copies.ts'
import { hashOf, piecesOf, readPhotoList } from './copyFormat.ts'
import { addErased, type ErasedList } from './erasedList.ts'
import { carryPool } from './photoPool.ts'

/**
 * Lies in a second place and says that it is one. A disk that is not plugged in often leaves an empty folder where it
 * would be: copies laid there would only seem to be elsewhere.
 */
const signName = 'lustrum-copies.txt'
const sign = () => `${say('Copies of a Lustrum shop are kept in this folder. Leave this file where it is.')}
`
/** A folder on a network that is gone does not answer at all. */
const patienceMs = 60_000

/** Makes a folder a second place. Refuses one that is not there, cannot be written, or lies within the data folder. */
export async function beginPlace(place: string, dataDir: string): Promise<void> {
  if (!isAbsolute(place))
    refuse(
      'place-bad',
      { place },
      say('"{place}" is no whole path: give it from the drive or the root on.', { place }),
    )
  const within = relative(resolve(dataDir), resolve(place))
  if (within === '' || !(within.startsWith('..') || isAbsolute(within)))
    refuse(
      'place-bad',
      { place },
      say('{place} lies in the data folder itself: choose another disk.', { place }),
    )
  try {
    if (!(await inTime(stat(place))).isDirectory())
      refuse('place-bad', { place }, say('{place} is no folder.', { place }))
    await inTime(writeFile(join(place, signName), sign()))
  } catch (error) {
    const said = diskRefusal(error, place)
    throw said instanceof Error && said !== error ? refuse('place-bad', { place }, said.message) : error
  }
}

/** Whether the second place lies on the same disk as the data, which then go together. */
export async function onSameDisk(place: string, dataDir: string): Promise<boolean> {
  const [there, here] = await Promise.all([stat(place), stat(dataDir)])
  return there.dev === here.dev
}

/**
 * Carries a copy there with those of its photos that are not there yet, and reads all of it back. The photos go first, so
 * that a copy there is never without them. Refuses in words where the place is gone or full.
 */
export function carryTo(place: string, copy: CopyFile): Promise<void> {
  return onDisk(say('the second place {place}', { place }), async () => {
    await inTime(assertSign(place))
    if (copy.photos) {
      const { pool, lock } = copy.photos
      const sha256s = await readPhotoList(copy.path)
      await carryPool(dirname(copy.path), place, { pool, lock, sha256s }, inTime)
    }
    await inTime(
      (async () => {
        const part = join(place, `${copy.name}.part`)
        try {
          await copyFile(copy.path, part)
          const written = await open(part, 'r+')
          await written.sync().finally(() => written.close())
          const [there, here] = await Promise.all([part, copy.path].map(path => hashOf(piecesOf(path))))
          if (there !== here)
            throw Object.assign(new Error('what was read back is not what was written'), { code: 'EIO' })
          await rename(part, join(place, copy.name))
        } finally {
          await rm(part, { force: true }).catch(() => {})
        }
      })(),
    )
  })
}

/** The copies of a shop there, newest first. Refuses in words where the place is gone. */
export function copiesIn(place: string, shopId: string): Promise<CopyFile[]> {
  return onDisk(say('the second place {place}', { place }), () =>
    inTime(assertSign(place).then(() => listCopies(place, shopId))),
  )
}

/** Adds to the list of who was erased there. Refuses in words where the place is gone or full. */
export function carryErased(place: string, erased: ErasedList): Promise<void> {
  return onDisk(say('the second place {place}', { place }), () => inTime(addErased(place, erased)))
}

async function assertSign(place: string): Promise<void> {
  await readFile(join(place, signName))
}

async function inTime<T>(work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    const error = Object.assign(new Error('no answer within a minute'), { code: 'ETIMEDOUT' })
    timer = setTimeout(() => reject(error), patienceMs)
  })
  return Promise.race([work, late]).finally(() => clearTimeout(timer))
}
