/*
 * How a copy takes the place of what is here. It is unpacked and made ready beside it while the app runs; the next start
 * keeps what was here and moves it in. `restore.json` says that it is ready, and is the last thing to go: cut off
 * anywhere in between, the next start goes on.
 */

import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { onDisk } from '../diskWords.ts'
import { oneLine } from '../oneLine.ts'
import { moveWhole, writeWhole } from '../wholeFile.ts'
import { copiesDir, makeCopy } from './copies.ts'
import { databaseName, readHeader, readPhotoList } from './copyFormat.ts'
import { inspectBeside } from './inspectBeside.ts'
import { markShop } from './marker.ts'
import { layFromFolder, layPhoto, poolOf } from './photoPool.ts'
import { type ReadCopy, unpackCopy } from './readCopy.ts'

/** A copy made ready to take the place of what is here. */
export interface ReadyCopy {
  shopId: string
  /** Epoch minute the copy was made. */
  madeAt: number
  shopName: string
  /** Photos it has that are nowhere to be found any more; none where all are there. */
  photosMissing?: number
}

/** And what became of what was here: said before anything of it moves, so that a start cut off is gone on with. */
interface Underway extends ReadyCopy {
  /** The copy made of it, or the folder it is moved to; null: there was nothing. */
  kept?: { as: string; moved: boolean } | null
}

const readyFile = (dataDir: string) => join(dataDir, 'restore.json')
const stagedDir = (dataDir: string) => join(dataDir, 'restore')
/** SQLite keeps these beside the database; one of another database would spoil it. */
const beside = ['-wal', '-shm', '-journal'].map(end => databaseName + end)

/** The copy that the next start will open; null where there is none. */
export function readyCopy(dataDir: string): ReadyCopy | null {
  try {
    return JSON.parse(readFileSync(readyFile(dataDir), 'utf8')) as ReadyCopy
  } catch {
    return null
  }
}

/**
 * Unpacks a copy beside what is here and reads it over; gives back where its database lies, to be brought up to date
 * before `sayReady`, and how many of its photos are nowhere to be found. Refuses a copy that is damaged, locked with another passphrase, or too large for the disk.
 */
export async function layOut(
  dataDir: string,
  path: string,
  passphrase: string | null,
): Promise<ReadCopy & { file: string; photosMissing: number }> {
  const dir = stagedDir(dataDir)
  takeBack(dataDir)
  return onDisk(dir, async () => {
    mkdirSync(dir, { recursive: true, mode: 0o700 })
    const read = await unpackCopy(path, passphrase, dir)
    const file = join(dir, databaseName)
    const { fault, shopId } = await inspectBeside(file, 'hashed')
    if (fault !== null || shopId !== read.header.shopId)
      throw new Refusal(
        'copy-damaged',
        'path',
        path,
        say('The copy {path} is damaged ({fault}). Nothing was changed here: choose another copy.', {
          path,
          fault: oneLine(fault ?? say('its database is another shop’s')),
        }),
      )
    return { ...read, file, photosMissing: await layPhotos(dataDir, path, passphrase) }
  }).catch(error => {
    takeBack(dataDir)
    throw error
  })
}

/**
 * Lays a copy's photos out: from beside it, or from the copies or the data here, where the same photo may lie too.
 * Answers how many are in none of them.
 */
async function layPhotos(dataDir: string, path: string, passphrase: string | null): Promise<number> {
  const { header } = await readHeader(path)
  if (!header.photos) return 0
  const folders = [...new Set([dirname(path), copiesDir(dataDir)])]
  const pools = await Promise.all(folders.map(folder => poolOf(folder, header.photos!, passphrase)))
  const staged = stagedDir(dataDir)
  let missing = 0
  for (const sha256 of await readPhotoList(path)) {
    let laid = false
    for (const pool of pools) laid ||= pool !== null && (await layPhoto(pool, sha256, staged))
    if (!laid && !(await layFromFolder(dataDir, sha256, staged))) missing++
  }
  return missing
}

/** What was laid out is what the next start opens. */
export function sayReady(dataDir: string, ready: ReadyCopy): void {
  writeWhole(readyFile(dataDir), JSON.stringify(ready))
}

/** What was laid out is not opened after all. */
export function takeBack(dataDir: string): void {
  rmSync(readyFile(dataDir), { force: true })
  rmSync(stagedDir(dataDir), { recursive: true, force: true })
}

/** What a start did with a copy that was ready. */
export interface Restored extends ReadyCopy {
  /** Where what was here lies now; null where there was nothing. */
  keptAs: string | null
}

/** Moves a copy that is ready into the place of what is here, which is kept first; null where none is. */
export async function finishRestore(
  file: string,
  dataDir: string,
  { at, passphrase }: { at: number; passphrase: string | null },
): Promise<Restored | null> {
  const underway = readyCopy(dataDir) as Underway | null
  if (!underway) {
    // Half laid out when the app ended: nothing anybody asked for.
    rmSync(stagedDir(dataDir), { recursive: true, force: true })
    return null
  }
  const dir = stagedDir(dataDir)
  const staged = join(dir, databaseName)
  let { kept, ...ready } = underway
  if (existsSync(staged)) {
    const fresh = readdirSync(dir).filter(name => name !== databaseName)
    if (kept === undefined) {
      kept = await keepPresent(file, [...fresh, databaseName, ...beside], { at, passphrase })
      writeWhole(readyFile(dataDir), JSON.stringify({ ...ready, kept } satisfies Underway))
    }
    const makeWay = (name: string) => {
      const here = join(dataDir, name)
      if (!kept?.moved) rmSync(here, { recursive: true, force: true })
      else if (existsSync(here)) renameSync(here, join(kept.as, name))
    }
    for (const name of fresh) {
      makeWay(name)
      renameSync(join(dir, name), join(dataDir, name))
    }
    for (const name of beside) makeWay(name)
    if (kept?.moved) makeWay(databaseName)
    moveWhole(staged, file)
  }
  markShop(dataDir, ready.shopId)
  takeBack(dataDir)
  return { ...ready, keptAs: kept?.as ?? null }
}

/**
 * Keeps what is here as a copy; where none can be made of it, because it is damaged or the database is gone, answers
 * the folder to which the files that would be replaced are to be moved as they are.
 */
async function keepPresent(
  file: string,
  replaced: readonly string[],
  { at, passphrase }: { at: number; passphrase: string | null },
): Promise<NonNullable<Underway['kept']> | null> {
  const dataDir = dirname(file)
  if (!replaced.some(name => existsSync(join(dataDir, name)))) return null
  try {
    return { as: (await makeCopy(file, { at, passphrase, beforeRestore: true })).path, moved: false }
  } catch {
    // No copy can be made of it, or there is no room for a second one: to move it takes none.
  }
  const aside = join(dataDir, 'set-aside')
  mkdirSync(aside, { recursive: true, mode: 0o700 })
  return { as: mkdtempSync(join(aside, `${at}-`)), moved: true }
}
