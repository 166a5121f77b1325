/** Photos as files beside the database, each named by the hash of its bytes; `files/` goes along with every copy. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { flush, moveWhole } from '../wholeFile.ts'
import type { MadePhoto } from './makePhoto.ts'

const folderOf = (dataDir: string) => join(dataDir, 'files', 'photos')

const nameOf = (sha256: string, small: boolean) => `${sha256}${small ? '-small' : ''}.jpg`

/** Keeps a photo, on the disk before this returns. The same photo twice is one file. */
export function keepPhoto(dataDir: string, photo: MadePhoto): void {
  mkdirSync(folderOf(dataDir), { recursive: true })
  for (const [name, bytes] of [
    [nameOf(photo.sha256, true), photo.small],
    [nameOf(photo.sha256, false), photo.bytes],
  ] as const) {
    const path = join(folderOf(dataDir), name)
    if (existsSync(path)) continue
    writeFileSync(`${path}.new`, bytes, { mode: 0o600 })
    flush(`${path}.new`)
    moveWhole(`${path}.new`, path)
  }
}

/** The bytes of a photo; null where its file is gone. */
export function readPhoto(
  dataDir: string,
  sha256: string,
  small = false,
): Promise<Uint8Array<ArrayBuffer> | null> {
  return readFile(join(folderOf(dataDir), nameOf(sha256, small))).then(
    bytes => new Uint8Array(bytes),
    () => null,
  )
}

/** The same at once, for a file that is packed row by row. */
export function photoBytes(dataDir: string, sha256: string): Uint8Array | null {
  const path = join(folderOf(dataDir), nameOf(sha256, false))
  return existsSync(path) ? readFileSync(path) : null
}

/** Takes out every photo but these, and what a crash left half written. Answers how many files went. */
export function keepOnly(dataDir: string, sha256s: ReadonlySet<string>): number {
  const folder = folderOf(dataDir)
  const names = existsSync(folder) ? readdirSync(folder) : []
  const stray = names.filter(name => {
    const sha256 = /^([0-9a-f]{64})(-small)?\.jpg$/.exec(name)?.[1]
    return sha256 === undefined || !sha256s.has(sha256)
  })
  for (const name of stray) rmSync(join(folder, name), { force: true })
  return stray.length
}
