import { createHash } from 'node:crypto'
import { createReadStream, mkdirSync } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { pipeline, Readable } from 'node:stream'
import { createGunzip } from 'node:zlib'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { oneLine } from '../oneLine.ts'
import {
  type CopiedFile,
  type CopyContent,
  type CopyHeader,
  mostContentBytes,
  nameIsSafe,
  pieceBytes,
  piecesOf,
  readHeader,
} from './copyFormat.ts'
import { openLock, unseal } from './sealing.ts'

export interface ReadCopy {
  header: CopyHeader
  content: CopyContent
}

/** What a copy says it holds; its files are not read. Refuses as `unpackCopy` does. */
export function readContent(path: string, passphrase: string | null): Promise<ReadCopy> {
  return reading(path, passphrase, async (bytes, header) => ({ header, content: await contentOf(bytes) }))
}

/**
 * Reads a whole copy and holds every file in it against its hash; with `into`, a folder, the files are laid there as
 * well. @throws Refusal `copy-foreign`, `passphrase-wrong` (also where one is missing) or `copy-damaged`, which says
 * what could still be read.
 */
export function unpackCopy(path: string, passphrase: string | null, into: string | null): Promise<ReadCopy> {
  return reading(path, passphrase, async (bytes, header) => {
    const content = await contentOf(bytes)
    const sound: string[] = []
    for (const file of content.files) {
      try {
        await takeFile(bytes, file, into)
      } catch (error) {
        throw notTheDisk(error) ? damaged(path, error, sound, content) : error
      }
      sound.push(file.name)
    }
    if ((await bytes.take(1)).length > 0)
      throw damaged(path, new Error('more follows than it lists'), sound, content)
    return { header, content }
  })
}

async function reading<T>(
  path: string,
  passphrase: string | null,
  work: (bytes: Bytes, header: CopyHeader) => Promise<T>,
): Promise<T> {
  const { header, bodyAt } = await readHeader(path)
  const key = header.lock && (await keyFor(header.lock, passphrase))
  const bound = key && Buffer.concat(await Array.fromAsync(piecesOf(path, bodyAt - 1)))
  // Opened only now that it is read at once: one that waits would hold the file, and what went wrong with it end the app.
  const source = createReadStream(path, { start: bodyAt, highWaterMark: pieceBytes })
  const gunzip = createGunzip({ chunkSize: pieceBytes })
  // What goes wrong on the way ends the gunzip, and so comes out where its bytes are waited for.
  pipeline(key && bound ? Readable.from(unseal(source, key, bound)) : source, gunzip, () => {})
  try {
    return await work(new Bytes(gunzip), header)
  } catch (error) {
    throw notTheDisk(error) ? damaged(path, error) : error
  } finally {
    gunzip.destroy()
    source.destroy()
  }
}

async function keyFor(lock: NonNullable<CopyHeader['lock']>, passphrase: string | null): Promise<Buffer> {
  const key = passphrase === null ? null : await openLock(lock, passphrase)
  if (key) return key
  throw new Refusal(
    'passphrase-wrong',
    'passphrase',
    null,
    passphrase === null
      ? say('This copy is locked: enter the passphrase it was made with.')
      : say(
          'This copy was made with another passphrase: enter that one. Without it nobody can read the copy.',
        ),
  )
}

/** Neither a refusal already in words nor the disk's own fault: the copy is not as it was written. */
function notTheDisk(error: unknown): error is Error {
  const code = (error as NodeJS.ErrnoException).code ?? ''
  return (
    error instanceof Error && !(error instanceof Refusal) && (!/^E[A-Z]+$/.test(code) || code === 'EBADMSG')
  )
}

function damaged(path: string, error: Error, sound: string[] = [], content?: CopyContent): Refusal {
  const listed = content?.files.length ?? 0
  const rest =
    listed === 0
      ? say('Nothing of it could be read.')
      : sound.length === 0
        ? say('Its list of what it holds could be read, but none of its files.')
        : say('Of its {listed} files these are whole: {sound}.', { listed, sound: sound.join(', ') })
  return new Refusal(
    'copy-damaged',
    'path',
    path,
    say('The copy {path} is damaged ({fault}). {rest} Nothing was changed here: choose another copy.', {
      path,
      fault: oneLine(error.message),
      rest,
    }),
  )
}

async function contentOf(bytes: Bytes): Promise<CopyContent> {
  const length = (await bytes.exactly(4)).readUInt32BE()
  if (length > mostContentBytes) throw new Error('its list of files is longer than any')
  const content = JSON.parse((await bytes.exactly(length)).toString('utf8')) as CopyContent
  const bad = content.files.find(
    ({ name, size }) => !nameIsSafe(name) || !Number.isSafeInteger(size) || size < 0,
  )
  if (bad) throw new Error(`it lists a file that no shop has: ${JSON.stringify(bad.name)}`)
  return content
}

async function takeFile(bytes: Bytes, file: CopiedFile, into: string | null): Promise<void> {
  const hash = createHash('sha256')
  const path = into && join(into, ...file.name.split('/'))
  if (path) mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
  const target: FileHandle | null = path ? await open(path, 'w', 0o600) : null
  try {
    for (let left = file.size; left > 0; ) {
      const chunk = await bytes.take(left)
      if (chunk.length === 0) throw new Error(`it ends within ${file.name}`)
      left -= chunk.length
      hash.update(chunk)
      await target?.writeFile(chunk)
    }
    if (hash.digest('hex') !== file.hash) throw new Error(`${file.name} is not as it was`)
    await target?.sync()
  } finally {
    await target?.close()
  }
}

/** Bytes by count, from chunks as they come. */
class Bytes {
  readonly #chunks: AsyncIterator<Buffer>
  #rest: Buffer = Buffer.alloc(0)

  constructor(chunks: AsyncIterable<Buffer>) {
    this.#chunks = chunks[Symbol.asyncIterator]()
  }

  /** At most so many, whatever is at hand; none at the end. */
  async take(most: number): Promise<Buffer> {
    while (this.#rest.length === 0) {
      const { value, done } = await this.#chunks.next()
      if (done) return Buffer.alloc(0)
      this.#rest = value
    }
    const taken = this.#rest.subarray(0, most)
    this.#rest = this.#rest.subarray(most)
    return taken
  }

  async exactly(count: number): Promise<Buffer> {
    const parts: Buffer[] = []
    for (let left = count; left > 0; ) {
      const part = await this.take(left)
      if (part.length === 0) throw new Error('it was cut short')
      parts.push(part)
      left -= part.length
    }
    return Buffer.concat(parts)
  }
}
