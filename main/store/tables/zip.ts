/**
 * Files packed into one, as PKWARE's APPNOTE writes ZIP down: each deflated as it comes, its sizes behind it, so that
 * nothing is held in memory and nothing is read twice.
 */

import { pipeline } from 'node:stream/promises'
import { crc32, createDeflateRaw } from 'node:zlib'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'

export interface ZipEntry {
  readonly name: string
  readonly parts: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>
}

/** What a length of four bytes holds; a longer file needs the form's extension, which not every system opens. */
const most = 0xff_ff_ff_ff
/** Names are UTF-8, sizes stand behind the data. */
const flags = 0x0808
/** 1980-01-01: when they were written is said inside, and a clock of its own would make no two files alike. */
const dosDate = 0x0021

/** Packs the entries in order and hands the bytes to `write`, which may take its time. */
export async function packZip(
  entries: AsyncIterable<ZipEntry>,
  write: (bytes: Uint8Array) => Promise<void>,
): Promise<void> {
  let offset = 0
  const put = async (bytes: Uint8Array) => {
    offset += bytes.length
    if (offset > most) throw tooLarge()
    await write(bytes)
  }
  const directory: Buffer[] = []
  for await (const { name, parts } of entries) {
    const called = Buffer.from(name)
    const startsAt = offset
    await put(Buffer.concat([numbers([0x04_03_4b_50, 4], ...common(0, 0, 0, called.length)), called]))
    let [crc, size, packed] = [0, 0, 0]
    await pipeline(
      async function* () {
        for await (const part of parts) {
          const bytes = Buffer.from(part as Uint8Array)
          crc = crc32(bytes, crc)
          size += bytes.length
          if (size > most) throw tooLarge()
          yield bytes
        }
      },
      createDeflateRaw(),
      async source => {
        for await (const chunk of source as AsyncIterable<Buffer>) {
          packed += chunk.length
          await put(chunk)
        }
      },
    )
    await put(numbers([0x08_07_4b_50, 4], [crc, 4], [packed, 4], [size, 4]))
    directory.push(
      numbers([0x02_01_4b_50, 4], [20, 2], ...common(crc, packed, size, called.length)),
      // No comment, one disk, no attributes; then where the entry begins.
      numbers([0, 2], [0, 2], [0, 2], [0, 4], [startsAt, 4]),
      called,
    )
  }
  const startsAt = offset
  const list = Buffer.concat(directory)
  await put(list)
  const count = directory.length / 3
  await put(
    numbers([0x06_05_4b_50, 4], [0, 4], [count, 2], [count, 2], [list.length, 4], [startsAt, 4], [0, 2]),
  )
}

/** What an entry's two headers share. */
function common(crc: number, packed: number, size: number, nameLength: number): [number, number][] {
  return [
    [20, 2],
    [flags, 2],
    [8, 2],
    [0, 2],
    [dosDate, 2],
    [crc, 4],
    [packed, 4],
    [size, 4],
    [nameLength, 2],
    [0, 2],
  ]
}

/** Numbers of so many bytes each, the smallest byte first. */
function numbers(...fields: [value: number, bytes: number][]): Buffer {
  const all = Buffer.alloc(fields.reduce((sum, [, bytes]) => sum + bytes, 0))
  fields.reduce((at, [value, bytes]) => all.writeUIntLE(value, at, bytes), 0)
  return all
}

function tooLarge(): Refusal {
  return new Refusal(
    'too-large',
    '',
    null,
    say(
      'This is more than 4 GB, which one such file cannot hold: take a copy of the whole shop from Backups instead.',
    ),
  )
}
