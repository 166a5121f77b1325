import { createWriteStream, statSync } from 'node:fs'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { flush } from '../wholeFile.ts'
import { type CopiedFile, type CopyContent, hashOf, headBytes, pieceBytes, piecesOf } from './copyFormat.ts'
import { type Lock, makeLock, seal } from './sealing.ts'

export interface FileToCopy {
  /** Its name in the copy. */
  name: string
  path: string
}

export interface CopyToWrite {
  shopId: string
  madeAt: number
  content: Omit<CopyContent, 'files'>
  files: readonly FileToCopy[]
  /** What lies beside it already; null: it has no photos. */
  photos: { pool: string; lock: Lock | null; sha256s: readonly string[] } | null
  /** Null: not encrypted. */
  passphrase: string | null
}

/** Writes a copy and waits until it is on the disk. What lies at `path` is overwritten; half a copy may stay on failure. */
export async function writeCopy(path: string, copy: CopyToWrite): Promise<void> {
  const { shopId, madeAt, passphrase } = copy
  const files: CopiedFile[] = []
  for (const file of copy.files)
    files.push({ name: file.name, size: statSync(file.path).size, hash: await hashOf(piecesOf(file.path)) })
  const content: CopyContent = { ...copy.content, files }
  const locked = passphrase === null ? null : await makeLock(passphrase)
  const head = headBytes({ shopId, madeAt, lock: locked?.lock ?? null }, copy.photos)
  const gzip = createGzip({ level: 6, chunkSize: pieceBytes })
  await Promise.all([
    pipeline(Readable.from(bodyOf(content, copy.files), { objectMode: false }), gzip),
    pipeline(
      whole(head, locked ? seal(gzip, locked.key, head) : gzip),
      createWriteStream(path, { mode: 0o600 }),
    ),
  ])
  flush(path)
}

async function* whole(head: Buffer, body: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  yield head
  yield* body
}

async function* bodyOf(content: CopyContent, files: readonly FileToCopy[]): AsyncGenerator<Buffer> {
  const json = Buffer.from(JSON.stringify(content))
  const length = Buffer.alloc(4)
  length.writeUInt32BE(json.length)
  yield Buffer.concat([length, json])
  for (const { path } of files) yield* piecesOf(path)
}
