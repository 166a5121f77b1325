/*
 * Photos beside copies. A photo never changes and is named by its bytes, so it lies once beside all the copies that have
 * it, and a copy every hour adds only what is new:
 *
 *   photos/<pool>/<sha256>.jpg       as it is, or locked:
 *   photos/<pool>/<sha256>.sealed    sealed as sealing.ts says, by a key of its own: HMAC-SHA256 of its name under the
 *                                    pool's key, which is the passphrase's by the lock in `lock.json`
 *
 * A pool is one shop's, and one passphrase's. Each copy says in the open which pool is its own and which photos it has
 * (copyFormat.ts), so that a photo is taken out with the last copy that has it, whatever passphrase that was made with.
 */
import { createHash, createHmac } from 'node:crypto'
import { createWriteStream, existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { copyFile, open, readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { photoPath } from '../photos/photoFiles.ts'
import { flush, moveWhole, writeWhole } from '../wholeFile.ts'
import { hashOf, piecesOf } from './copyFormat.ts'
import { type Lock, makeLock, openLock, seal, unseal } from './sealing.ts'

/** A pool that can be read and added to. */
export interface Pool {
  readonly dir: string
  readonly name: string
  readonly lock: Lock | null
  readonly key: Buffer | null
}

export const poolsDir = (folder: string) => join(folder, 'photos')

type Named = Pick<Pool, 'dir'> & { readonly lock: Lock | null }

const fileIn = ({ dir, lock }: Named, sha256: string) => join(dir, `${sha256}.${lock ? 'sealed' : 'jpg'}`)

/** The pool that a copy made now adds to; one locked is known by the passphrase that opens it. */
export async function poolToFill(folder: string, shopId: string, passphrase: string | null): Promise<Pool> {
  const pools = poolsDir(folder)
  const at = (name: string, lock: Lock | null, key: Buffer | null) => {
    mkdirSync(join(pools, name), { recursive: true, mode: 0o700 })
    return { dir: join(pools, name), name, lock, key }
  }
  if (passphrase === null) return at(`${shopId}-open`, null, null)
  for (const name of await poolsOf(folder, shopId)) {
    const lock = lockIn(join(pools, name))
    const key = lock && (await openLock(lock, passphrase))
    if (key) return at(name, lock, key)
  }
  const { lock, key } = await makeLock(passphrase)
  const pool = at(`${shopId}-${createHash('sha256').update(lock.salt).digest('hex').slice(0, 16)}`, lock, key)
  writeWhole(join(pool.dir, 'lock.json'), JSON.stringify(lock))
  return pool
}

/** The pool of a copy in `folder`; null where the passphrase does not open it. */
export async function poolOf(
  folder: string,
  { pool: name, lock }: { pool: string; lock: Lock | null },
  passphrase: string | null,
): Promise<Pool | null> {
  const key = lock && passphrase !== null ? await openLock(lock, passphrase) : null
  return lock && !key ? null : { dir: join(poolsDir(folder), name), name, lock, key }
}

async function poolsOf(folder: string, shopId: string): Promise<string[]> {
  const names = await namesIn(poolsDir(folder))
  return names.filter(name => name.startsWith(`${shopId}-`)).sort()
}

const namesIn = (dir: string) =>
  readdir(dir).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })

function lockIn(dir: string): Lock | null {
  try {
    return JSON.parse(readFileSync(join(dir, 'lock.json'), 'utf8')) as Lock
  } catch {
    // Begun and never finished, or spoiled: a new pool is begun, and the copies keep their own lock for this one.
    return null
  }
}

const photoName = /^([0-9a-f]{64})\.(?:jpg|sealed)$/

/** The photos that lie in a pool, by their hashes; whether each is whole is not looked at. */
export async function photosIn(pool: Pick<Pool, 'dir'>): Promise<Set<string>> {
  const names = await namesIn(pool.dir)
  return new Set(names.flatMap(name => photoName.exec(name)?.[1] ?? []))
}

/**
 * Adds what the pool does not have yet of these photos of a data folder, each read back before it counts. Answers which
 * of them the pool has now, in order; the others are gone from the data folder, or damaged there.
 */
export async function fillPool(pool: Pool, dataDir: string, sha256s: readonly string[]): Promise<string[]> {
  const held = await photosIn(pool)
  for (const sha256 of sha256s)
    if (!held.has(sha256) && existsSync(photoPath(dataDir, sha256)) && (await add(pool, dataDir, sha256)))
      held.add(sha256)
  return sha256s.filter(sha256 => held.has(sha256)).sort()
}

async function add(pool: Pool, dataDir: string, sha256: string): Promise<boolean> {
  const path = fileIn(pool, sha256)
  const part = `${path}.new`
  try {
    const bytes = piecesOf(photoPath(dataDir, sha256))
    const written = pool.key ? seal(bytes, keyOf(pool.key, sha256), Buffer.from(sha256)) : bytes
    await pipeline(written, createWriteStream(part, { mode: 0o600 }))
    flush(part)
    if ((await hashOf(unlocked(pool, sha256, part))) !== sha256) return false
    moveWhole(part, path)
    return true
  } finally {
    rmSync(part, { force: true })
  }
}

const keyOf = (key: Buffer, sha256: string) => createHmac('sha256', key).update(sha256).digest()

const unlocked = ({ key }: Pick<Pool, 'key'>, sha256: string, path: string): AsyncIterable<Buffer> =>
  key ? unseal(piecesOf(path), keyOf(key, sha256), Buffer.from(sha256)) : piecesOf(path)

/** Whether a photo of the pool is there and as it was, read from end to end. */
export async function isWhole(pool: Pool, sha256: string): Promise<boolean> {
  const path = fileIn(pool, sha256)
  return (
    existsSync(path) &&
    (await hashOf(unlocked(pool, sha256, path)).then(
      hash => hash === sha256,
      () => false,
    ))
  )
}

/** Takes a damaged photo out, so that the next copy adds it anew. */
export const takeOut = (pool: Pool, sha256: string) => rm(fileIn(pool, sha256), { force: true })

/** Lays a photo into a data folder; whether it could, whole. */
export async function layPhoto(pool: Pool, sha256: string, dataDir: string): Promise<boolean> {
  if (!existsSync(fileIn(pool, sha256))) return false
  return lay(unlocked(pool, sha256, fileIn(pool, sha256)), sha256, dataDir)
}

/** The same from a data folder, where the photo may lie still. */
export async function layFromFolder(from: string, sha256: string, dataDir: string): Promise<boolean> {
  const path = photoPath(from, sha256)
  return existsSync(path) && lay(piecesOf(path), sha256, dataDir)
}

async function lay(bytes: AsyncIterable<Buffer>, sha256: string, dataDir: string): Promise<boolean> {
  const path = photoPath(dataDir, sha256)
  mkdirSync(join(path, '..'), { recursive: true, mode: 0o700 })
  const hash = createHash('sha256')
  try {
    await pipeline(
      bytes,
      async function* (pieces) {
        for await (const piece of pieces) {
          hash.update(piece)
          yield piece
        }
      },
      createWriteStream(path, { mode: 0o600 }),
    )
  } catch (error) {
    rmSync(path, { force: true })
    // What the disk has no room for is not the photo's fault.
    if (/^E[A-Z]+$/.test((error as NodeJS.ErrnoException).code ?? '')) throw error
    return false
  }
  const whole = hash.digest('hex') === sha256
  if (whole) flush(path)
  else rmSync(path, { force: true })
  return whole
}

/** Carries what the pool of another folder does not have yet, photo by photo; `each` stands around every one. */
export async function carryPool(
  from: string,
  to: string,
  { pool, lock, sha256s }: { pool: string; lock: Lock | null; sha256s: readonly string[] },
  each: (work: Promise<void>) => Promise<void>,
): Promise<void> {
  const [here, there] = [from, to].map(folder => ({ dir: join(poolsDir(folder), pool), lock }))
  const held = await photosIn(there!)
  const missing = sha256s.filter(sha256 => !held.has(sha256))
  if (missing.length === 0) return
  mkdirSync(there!.dir, { recursive: true, mode: 0o700 })
  for (const sha256 of missing) await each(carry(fileIn(here!, sha256), fileIn(there!, sha256)))
}

async function carry(from: string, to: string): Promise<void> {
  const part = `${to}.new`
  try {
    await copyFile(from, part)
    const written = await open(part, 'r+')
    await written.sync().finally(() => written.close())
    if ((await hashOf(piecesOf(part))) !== (await hashOf(piecesOf(from))))
      throw Object.assign(new Error('what was read back is not what was written'), { code: 'EIO' })
    // Not by `moveWhole`: a folder far away is not flushed.
    await rename(part, to)
  } finally {
    await rm(part, { force: true }).catch(() => {})
  }
}

/** A copy's photos, as they are asked for when others are taken out. */
export interface PoolUse {
  readonly pool: string
  photos(): Promise<readonly string[]>
}

/**
 * Takes the photos of a shop out that none of the copies has, and pools that none names. The copies are asked one after
 * another, the newest first, and only as long as there is something nobody claimed.
 */
export async function sweepPools(
  folder: string,
  shopId: string,
  copies: readonly PoolUse[],
): Promise<number> {
  let gone = 0
  for (const name of await poolsOf(folder, shopId)) {
    const dir = join(poolsDir(folder), name)
    const own = copies.filter(({ pool }) => pool === name)
    const stray = await photosIn({ dir })
    for (const { photos } of own) {
      if (stray.size === 0) break
      for (const sha256 of await photos()) stray.delete(sha256)
    }
    for (const each of await namesIn(dir))
      if (stray.has(photoName.exec(each)?.[1] ?? '')) await rm(join(dir, each), { force: true })
    if (own.length === 0) await rm(dir, { recursive: true, force: true })
    gone += stray.size
  }
  return gone
}
