/*
 * The form of a copy, one file that holds a shop:
 *
 *   LUSTRUM-COPY 2\n      what it is, and the version of this form; 1 is the same without photos beside it
 *   {...}\n               CopyHeader as JSON: whose, when, how it is locked, if it is, and which photos lie beside it;
 *                         then `sum`, the SHA-256 in hex of that JSON without it (older copies have none)
 *   photos                their hashes, 32 bytes each, in order: in the open, because whoever thins copies out must know
 *                         which photos are still some copy's. They tell how many there are, and whether one at hand is
 *                         among them
 *   body                  gzip of: the length of the next part (4 bytes, big-endian), CopyContent as JSON, then
 *                         the files it lists, one after another. Locked, the gzip is sealed as sealing.ts says,
 *                         and all that stands before it is what its first frame vouches for.
 *
 * The database comes first of the files, as `lustrum.db`.
 */

import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { Holdings } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Lock } from './sealing.ts'

const firstLine = 'LUSTRUM-COPY 2\n'
const firstLines = [firstLine, 'LUSTRUM-COPY 1\n']
export const databaseName = 'lustrum.db'

/** Bytes read, packed and unpacked at once: each piece is a trip to another thread, and a year's database has many. */
export const pieceBytes = 1024 * 1024

/** A file's bytes up to `end`. It is opened only once they are taken: none stays open where the reading never comes. */
export async function* piecesOf(path: string, end?: number): AsyncGenerator<Buffer> {
  yield* createReadStream(path, { highWaterMark: pieceBytes, end }) as AsyncIterable<Buffer>
}

/** The SHA-256 of bytes that come piece by piece, in hex. */
export async function hashOf(bytes: AsyncIterable<Buffer>): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(Readable.from(bytes, { objectMode: false }), hash)
  return hash.digest('hex')
}

const mostHeaderBytes = 4_096
const hashBytes = 32
/** A thousand cars a year with twenty photos each, for fifty years. */
const mostPhotos = 1_000_000
/** A list of every file and table, with room. */
export const mostContentBytes = 4 * 1024 * 1024

export interface CopyHeader {
  /** By which a shop's database is known; the same in all its copies. */
  shopId: string
  /** Epoch minute. */
  madeAt: number
  /** Null: everybody can read it. */
  lock: Lock | null
  /** The photos that lie beside it; none where it has none, or they are among its files. */
  photos?: PhotosBeside
}

/** Photos of a copy in a pool beside it (photoPool.ts). */
export interface PhotosBeside {
  pool: string
  /** How the pool is locked; null: it is not. */
  lock: Lock | null
  count: number
  /** Of the list of them, SHA-256 in hex. */
  sum: string
}

type Written = CopyHeader & { sum?: unknown }

export interface CopiedFile {
  /** Where it lies in the data folder, with slashes. */
  name: string
  size: number
  /** SHA-256 in hex. */
  hash: string
}

export interface CopyContent {
  holdings: Holdings
  /** Rows by table. */
  tables: Record<string, number>
  /** The migrations the database had had. */
  schema: string[]
  files: CopiedFile[]
}

/** What stands before the body of a copy with these photos beside it, by their hashes in hex. */
export function headBytes(
  header: Omit<CopyHeader, 'photos'>,
  beside: { pool: string; lock: Lock | null; sha256s: readonly string[] } | null,
): Buffer {
  const list = Buffer.from((beside?.sha256s ?? []).join(''), 'hex')
  const photos = beside && {
    pool: beside.pool,
    lock: beside.lock,
    count: beside.sha256s.length,
    sum: sha256Of(list),
  }
  const whole = photos ? { ...header, photos } : header
  const lines = `${firstLine}${JSON.stringify({ ...whole, sum: sumOf(whole) })}\n`
  return Buffer.concat([Buffer.from(lines), list])
}

const sha256Of = (bytes: Buffer | string) => createHash('sha256').update(bytes).digest('hex')

/** The names in order, so that what was read sums up as it was written. */
function sumOf({ shopId, madeAt, lock, photos }: CopyHeader): string {
  return sha256Of(JSON.stringify({ shopId, madeAt, lock, photos }))
}

/**
 * The header of a copy, where the list of its photos begins, and its body. @throws Refusal `copy-foreign` where the file
 * is no copy, or its beginning is not as it was written.
 */
export async function readHeader(
  path: string,
): Promise<{ header: CopyHeader; listAt: number; bodyAt: number }> {
  const file = await open(path, 'r')
  const { buffer: bytes, bytesRead: length } = await file
    .read(Buffer.alloc(mostHeaderBytes), 0, mostHeaderBytes, 0)
    .finally(() => file.close())
  const end = bytes.indexOf('\n', firstLine.length)
  const begins = firstLines.includes(bytes.subarray(0, firstLine.length).toString('latin1'))
  if (!begins || end === -1 || end >= length) throw foreign(path)
  try {
    const { sum, ...header } = JSON.parse(bytes.subarray(firstLine.length, end).toString('utf8')) as Written
    if (headerIsWhole(header) && (sum === undefined || sum === sumOf(header)))
      return { header, listAt: end + 1, bodyAt: end + 1 + hashBytes * (header.photos?.count ?? 0) }
  } catch {
    // No JSON: as foreign as any other line.
  }
  throw foreign(path)
}

/** The photos that lie beside a copy, by their hashes in hex, in order. @throws Refusal `copy-foreign`. */
export async function readPhotoList(path: string): Promise<string[]> {
  const { header, listAt, bodyAt } = await readHeader(path)
  if (!header.photos) return []
  const list = Buffer.alloc(bodyAt - listAt)
  const file = await open(path, 'r')
  const { bytesRead } = await file.read(list, 0, list.length, listAt).finally(() => file.close())
  if (bytesRead < list.length || sha256Of(list) !== header.photos.sum) throw foreign(path)
  return Array.from({ length: header.photos.count }, (_, i) =>
    list.subarray(i * hashBytes, (i + 1) * hashBytes).toString('hex'),
  )
}

function headerIsWhole({ shopId, madeAt, lock, photos, ...rest }: CopyHeader): boolean {
  return (
    typeof shopId === 'string' &&
    Number.isSafeInteger(madeAt) &&
    lockIsWhole(lock) &&
    (photos === undefined || besideIsWhole(photos)) &&
    // A name damaged, that of the sum among them, is one more.
    Object.keys(rest).length === 0
  )
}

function besideIsWhole({ pool, lock, count, sum }: PhotosBeside): boolean {
  return (
    /^[\w-]{1,100}$/.test(pool) &&
    lockIsWhole(lock) &&
    Number.isSafeInteger(count) &&
    count >= 0 &&
    count <= mostPhotos &&
    typeof sum === 'string'
  )
}

function lockIsWhole(lock: Lock | null): boolean {
  return (
    lock === null ||
    (typeof lock.salt === 'string' && typeof lock.check === 'string' && typeof lock.cost === 'number')
  )
}

function foreign(path: string): Refusal {
  return new Refusal(
    'copy-foreign',
    'path',
    path,
    say('{path} is no copy of a shop, or its beginning is damaged: choose another copy.', { path }),
  )
}

/** Whether a name from a copy stays inside the folder it is unpacked into. */
export function nameIsSafe(name: string): boolean {
  const parts = name.split('/')
  return parts.length <= 4 && parts.every(part => /^[\w-][\w. -]{0,200}$/.test(part))
}
