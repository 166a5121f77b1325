/** Photos as files beside the database, each named by the hash of its bytes. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { flush, moveWhole } from '../wholeFile.ts'
import { type MadePhoto, makeSmall } from './makePhoto.ts'

const folderOf = (dataDir: string) => join(dataDir, 'files', 'photos')

const nameOf = (sha256: string, small: boolean) => `${sha256}${small ? '-small' : ''}.jpg`

/** Where a photo lies in a data folder. */
export const photoPath = (dataDir: string, sha256: string) => join(folderOf(dataDir), nameOf(sha256, false))

/** Keeps a photo, on the disk before this returns. The same photo twice is one file. */
export function keepPhoto(dataDir: string, photo: MadePhoto): void {
  mkdirSync(folderOf(dataDir), { recursive: true })
  keepFile(dataDir, nameOf(photo.sha256, true), photo.small)
  keepFile(dataDir, nameOf(photo.sha256, false), photo.bytes)
}

function keepFile(dataDir: string, name: string, bytes: Uint8Array): void {
  const path = join(folderOf(dataDir), name)
  if (existsSync(path)) return
  writeFileSync(`${path}.new`, bytes, { mode: 0o600 })
  flush(`${path}.new`)
  moveWhole(`${path}.new`, path)
}

/** The bytes of a photo; null where its file is gone. No copy carries the small ones: after a restore they are made anew. */
export async function readPhoto(
  dataDir: string,
  sha256: string,
  small = false,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const there = await bytesOf(dataDir, nameOf(sha256, small))
  if (there || !small) return there
  const whole = await bytesOf(dataDir, nameOf(sha256, false))
  const made = whole && (await makeSmall(whole).catch(() => null))
  if (made) keepFile(dataDir, nameOf(sha256, true), made)
  return made && new Uint8Array(made)
}

function bytesOf(dataDir: string, name: string): Promise<Uint8Array<ArrayBuffer> | null> {
  return readFile(join(folderOf(dataDir), name)).then(
    bytes => new Uint8Array(bytes),
    () => null,
  )
}

/** The same at once, for a file that is packed row by row. */
export function photoBytes(dataDir: string, sha256: string): Uint8Array | null {
  const path = photoPath(dataDir, sha256)
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
