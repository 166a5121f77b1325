import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

interface Entry {
  files?: Record<string, Entry>
  size?: number
  offset?: string
  unpacked?: boolean
}

export interface Packed {
  path: string
  size: number
  /** Lies beside the archive, not in it. */
  unpacked: boolean
  bytes(): Buffer
}

/**
 * The files of an archive of the shell's. Its format: a length, then a JSON tree with each file's size and offset,
 * then the files one after another (electron/asar, README, "Format").
 */
export function readAsar(archive: string): Packed[] {
  const whole = readFileSync(archive)
  const start = 8 + whole.readUInt32LE(4)
  const header = JSON.parse(whole.toString('utf8', 16, 16 + whole.readUInt32LE(12))) as Entry
  const list = (entry: Entry, path: string): Packed[] =>
    Object.entries(entry.files ?? {}).flatMap(([name, child]) => {
      const childPath = path === '' ? name : `${path}/${name}`
      if (child.files) return list(child, childPath)
      const size = child.size ?? 0
      const from = start + Number(child.offset)
      return {
        path: childPath,
        size,
        unpacked: child.unpacked === true,
        bytes: () =>
          child.unpacked
            ? readFileSync(join(`${archive}.unpacked`, childPath))
            : whole.subarray(from, from + size),
      }
    })
  return list(header, '')
}

/** Lays the archive's files out in a folder, those beside it among them. */
export function extractAsar(archive: string, dir: string): void {
  for (const file of readAsar(archive)) {
    const target = join(dir, file.path)
    mkdirSync(dirname(target), { recursive: true })
    if (file.unpacked) copyFileSync(join(`${archive}.unpacked`, file.path), target)
    else writeFileSync(target, file.bytes())
  }
}
