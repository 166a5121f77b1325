import { existsSync, mkdirSync, rmSync } from 'node:fs'
import { readdir, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { copiesToKeep } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { diskRefusal, onDisk } from '../diskWords.ts'
import { oneLine } from '../oneLine.ts'
import { moveWhole } from '../wholeFile.ts'
import { databaseName, type PhotosBeside, readHeader, readPhotoList } from './copyFormat.ts'
import { filesBeside } from './dataFiles.ts'
import { inspectBeside } from './inspectBeside.ts'
import { fillPool, poolToFill, sweepPools } from './photoPool.ts'
import { unpackCopy } from './readCopy.ts'
import { takeSnapshot } from './snapshot.ts'
import { writeCopy } from './writeCopy.ts'

/** A copy as its name and its first lines tell of it. */
export interface CopyFile {
  path: string
  name: string
  shopId: string
  /** Epoch minute. */
  madeAt: number
  /** It wants a passphrase. */
  locked: boolean
  /** Made of what was here before another copy took its place. */
  beforeRestore: boolean
  bytes: number
  /** The photos that lie beside it; none where it has none. */
  photos?: PhotosBeside
}

/** A file with a copy's ending whose beginning cannot be read. */
export interface UnreadCopy {
  path: string
  name: string
  /** Why, and the way out. */
  words: string
}

const ending = '.lustrum-copy'
const beforeEnding = `-before-restore${ending}`
/** Copies made before a restore are not thinned out; of these so many stay. */
const mostBeforeRestore = 5
/** Looked at in one folder; a shop has fewer than two hundred. */
const mostListed = 2_000

/** Where the copies of a data folder lie. */
export const copiesDir = (dataDir: string) => join(dataDir, 'backups')

/** Two copies of one minute keep two states: neither takes the other's name. */
function unusedName(
  folder: string,
  { shopId, madeAt, end }: { shopId: string; madeAt: number; end: string },
) {
  const iso = Temporal.Instant.fromEpochMilliseconds(madeAt * 60_000).toString()
  const stem = `${iso.slice(0, 10)}-${iso.slice(11, 13)}${iso.slice(14, 16)}Z-${shopId.slice(0, 8)}`
  for (let nth = 1; ; nth++) {
    const name = `${stem}${nth === 1 ? '' : `-${nth}`}${end}`
    if (!existsSync(join(folder, name))) return name
  }
}

/** Of one minute, the name with the longer or higher number is the newer. */
function newestFirst(a: CopyFile, b: CopyFile): number {
  return b.madeAt - a.madeAt || b.name.length - a.name.length || (a.name < b.name ? 1 : -1)
}

/** The copies in a folder, newest first, of one shop or of any; none where there is no folder. */
export async function listCopies(folder: string, shopId?: string): Promise<CopyFile[]> {
  const { copies } = await lookThrough(folder)
  return copies.filter(copy => shopId === undefined || copy.shopId === shopId)
}

/** Every file in a folder that ends as a copy does: those that can be read, newest first, and the others by name. */
export async function lookThrough(folder: string): Promise<{ copies: CopyFile[]; unread: UnreadCopy[] }> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })
  const copies: CopyFile[] = []
  const unread: UnreadCopy[] = []
  // Names begin with their day.
  const ours = names.filter(each => each.endsWith(ending)).sort((a, b) => (a < b ? 1 : -1))
  for (const name of ours.slice(0, mostListed)) {
    const path = join(folder, name)
    try {
      const info = await stat(path)
      if (!info.isFile()) continue
      const { header } = await readHeader(path)
      const { lock, ...told } = header
      const beforeRestore = name.endsWith(beforeEnding)
      copies.push({ ...told, path, name, locked: lock !== null, beforeRestore, bytes: info.size })
    } catch (error) {
      unread.push({ path, name, words: (diskRefusal(error, path) as Error).message })
    }
  }
  return { copies: copies.sort(newestFirst), unread }
}

export interface CopyOrder {
  /** Epoch minute. */
  at: number
  passphrase: string | null
  beforeRestore?: boolean
}

/**
 * Copies the shop of an open database into one file in its folder of copies, and gives back where it lies; of its photos
 * what no copy had yet is laid beside. Nothing is called a copy before it was checked: the database in it is read from
 * end to end, and the files written are read back and held against what went in. Refuses, in words, where the disk or the database will not have it.
 */
export function makeCopy(
  file: string,
  { at, passphrase, beforeRestore = false }: CopyOrder,
): Promise<CopyFile> {
  const dataDir = dirname(file)
  const folder = copiesDir(dataDir)
  const work = join(folder, 'unfinished')
  return onDisk(folder, async () => {
    rmSync(work, { recursive: true, force: true })
    try {
      mkdirSync(work, { recursive: true, mode: 0o700 })
      const snapshot = join(work, databaseName)
      await takeSnapshot(file, snapshot)
      const { fault, shopId, schema, tables, holdings, photos } = await inspectBeside(snapshot)
      if (fault !== null || shopId === null) throw unsound(file, fault ?? say('it is no shop’s'))
      const beside = await layBeside(folder, dataDir, { shopId, passphrase, photos })
      const packed = join(work, 'packed')
      await writeCopy(packed, {
        shopId,
        madeAt: at,
        content: { schema, tables, holdings },
        files: [{ name: databaseName, path: snapshot }, ...filesBeside(dataDir)],
        photos: beside,
        passphrase,
      })
      await unpackCopy(packed, passphrase, null)
      const end = beforeRestore ? beforeEnding : ending
      const name = unusedName(folder, { shopId, madeAt: at, end })
      const path = join(folder, name)
      moveWhole(packed, path)
      const [{ size }, { header }] = await Promise.all([stat(path), readHeader(path)])
      const { lock, ...told } = header
      return { ...told, path, name, locked: lock !== null, beforeRestore, bytes: size }
    } finally {
      rmSync(work, { recursive: true, force: true })
    }
  })
}

/** What the database names and is still there is laid beside the copies; null: the shop has no photos. */
async function layBeside(
  folder: string,
  dataDir: string,
  { shopId, passphrase, photos }: { shopId: string; passphrase: string | null; photos: readonly string[] },
) {
  if (photos.length === 0) return null
  const { name: pool, lock, ...rest } = await poolToFill(folder, shopId, passphrase)
  return { pool, lock, sha256s: await fillPool({ name: pool, lock, ...rest }, dataDir, photos) }
}

function unsound(file: string, fault: string): Refusal {
  return new Refusal(
    'database-damaged',
    'database',
    file,
    say(
      'No copy was made, because the database itself is damaged ({fault}). The copies made before are kept: restore the newest of them in the settings, under Backups.',
      { fault: oneLine(fault) },
    ),
  )
}

/**
 * Takes the copies of a shop out of a folder that are not kept any longer, and the photos that none of the others has;
 * returns how many copies went.
 */
export async function thinOut(folder: string, shopId: string, nowAt: number, zone: string): Promise<number> {
  const copies = await listCopies(folder, shopId)
  const usual = copies.filter(copy => !copy.beforeRestore)
  const kept = new Set(
    copiesToKeep(
      usual.map(copy => copy.madeAt),
      nowAt,
      zone,
    ),
  )
  const last = new Map(usual.toReversed().map(copy => [copy.madeAt, copy]))
  const gone = [
    ...usual.filter(copy => !kept.has(copy.madeAt) || last.get(copy.madeAt) !== copy),
    ...copies.filter(copy => copy.beforeRestore).slice(mostBeforeRestore),
  ]
  for (const { path } of gone) await rm(path, { force: true })
  if (gone.length > 0) await thinPhotos(folder, shopId)
  return gone.length
}

/** Where a copy is there that cannot be read, or that was not looked at, no photo goes: it may be that copy's. */
async function thinPhotos(folder: string, shopId: string): Promise<void> {
  const { copies, unread } = await lookThrough(folder)
  if (unread.length > 0 || copies.length >= mostListed) return
  const uses = copies.flatMap(({ path, photos }) =>
    photos ? [{ pool: photos.pool, photos: () => readPhotoList(path) }] : [],
  )
  await sweepPools(folder, shopId, uses).catch(error => {
    // A list that is not as it was written claims nothing for certain.
    if (!(error instanceof Refusal)) throw error
  })
}
