/*
 * The form of a copy, one file that holds a shop:
 *
 *   LUSTRUM-COPY 1\n      what it is, and the version of this form
 *   {...}\n               CopyHeader as JSON: whose, when, and how it is locked, if it is; then `sum`, the SHA-256 in
 *                         hex of that JSON without it (older copies have none)
 *   body                  gzip of: the length of the next part (4 bytes, big-endian), CopyContent as JSON, then
 *                         the files it lists, one after another. Locked, the gzip is sealed as sealing.ts says,
 *                         and the first two lines are what its first frame vouches for.
 *
 * The database comes first of the files, as `lustrum.db`.
 */

import { createHash } from 'node:crypto'
import { open } from 'node:fs/promises'
import type { Holdings } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Lock } from './sealing.ts'

export const firstLine = 'LUSTRUM-COPY 1\n'
export const databaseName = 'lustrum.db'

/** Bytes read, packed and unpacked at once: each piece is a trip to another thread, and a year's database has many. */
export const pieceBytes = 1024 * 1024

const mostHeaderBytes = 4_096
/** A list of every file and table, with room. */
export const mostContentBytes = 4 * 1024 * 1024

export interface CopyHeader {
  /** By which a shop's database is known; the same in all its copies. */
  shopId: string
  /** Epoch minute. */
  madeAt: number
  /** Null: everybody can read it. */
  lock: Lock | null
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

export function headerBytes(header: CopyHeader): Buffer {
  return Buffer.from(`${firstLine}${JSON.stringify({ ...header, sum: sumOf(header) })}\n`)
}

/** The names in order, so that what was read sums up as it was written. */
function sumOf({ shopId, madeAt, lock }: CopyHeader): string {
  return createHash('sha256').update(JSON.stringify({ shopId, madeAt, lock })).digest('hex')
}

/**
 * The header of a copy, and where its body begins. @throws Refusal `copy-foreign` where the file is no copy, or its
 * beginning is not as it was written.
 */
export async function readHeader(path: string): Promise<{ header: CopyHeader; length: number }> {
  const file = await open(path, 'r')
  const { buffer: bytes, bytesRead: length } = await file
    .read(Buffer.alloc(mostHeaderBytes), 0, mostHeaderBytes, 0)
    .finally(() => file.close())
  const end = bytes.indexOf('\n', firstLine.length)
  const begins = bytes.subarray(0, firstLine.length).toString('latin1') === firstLine
  if (!begins || end === -1 || end >= length) throw foreign(path)
  try {
    const { sum, ...header } = JSON.parse(bytes.subarray(firstLine.length, end).toString('utf8')) as Written
    if (headerIsWhole(header) && (sum === undefined || sum === sumOf(header)))
      return { header, length: end + 1 }
  } catch {
    // No JSON: as foreign as any other line.
  }
  throw foreign(path)
}

function headerIsWhole({ shopId, madeAt, lock, ...rest }: CopyHeader): boolean {
  return (
    typeof shopId === 'string' &&
    Number.isSafeInteger(madeAt) &&
    lockIsWhole(lock) &&
    // A name damaged, that of the sum among them, is one more.
    Object.keys(rest).length === 0
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
