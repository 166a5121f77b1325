/*
 * The form of a copy, one file that holds a shop:
 *
 *   LUSTRUM-COPY 1\n      what it is, and the version of this form
 *   {...}\n               CopyHeader as JSON: whose, when, and how it is locked, if it is
 *   body                  gzip of: the length of the next part (4 bytes, big-endian), CopyContent as JSON, then
 *                         the files it lists, one after another. Locked, the gzip is sealed as sealing.ts says,
 *                         and the first two lines are what its first frame vouches for.
 *
 * The database comes first of the files, as `lustrum.db`.
 */
import { open } from 'node:fs/promises'
import type { Holdings } from '../../domain/backup/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Lock } from './sealing.ts'

export const firstLine = 'LUSTRUM-COPY 1\n'
export const databaseName = 'lustrum.db'

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
  return Buffer.from(`${firstLine}${JSON.stringify(header)}\n`)
}

/** The header of a copy, and where its body begins. @throws Refusal `copy-foreign` where the file is no copy. */
export async function readHeader(path: string): Promise<{ header: CopyHeader; length: number }> {
  const file = await open(path, 'r')
  const { buffer: bytes, bytesRead: length } = await file
    .read(Buffer.alloc(mostHeaderBytes), 0, mostHeaderBytes, 0)
    .finally(() => file.close())
  const end = bytes.indexOf('\n', firstLine.length)
  const begins = bytes.subarray(0, firstLine.length).toString('latin1') === firstLine
  if (!begins || end === -1 || end >= length) throw foreign(path)
  try {
    const header = JSON.parse(bytes.subarray(firstLine.length, end).toString('utf8')) as CopyHeader
    if (typeof header.shopId === 'string' && Number.isSafeInteger(header.madeAt) && lockIsWhole(header.lock))
      return { header, length: end + 1 }
  } catch {
    // No JSON: as foreign as any other line.
  }
  throw foreign(path)
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
    `${path} is no copy of a shop, or its beginning is damaged: choose a file that ends in .lustrum-copy.`,
  )
}

/** Whether a name from a copy stays inside the folder it is unpacked into. */
export function nameIsSafe(name: string): boolean {
  const parts = name.split('/')
  return parts.length <= 4 && parts.every(part => /^[\w-][\w. -]{0,200}$/.test(part))
}
