import { mkdirSync, rmSync } from 'node:fs'
import { open } from 'node:fs/promises'
import { dirname } from 'node:path'
import { onDisk } from '../diskWords.ts'
import { moveWhole } from '../wholeFile.ts'
import { packZip, type ZipEntry } from './zip.ts'

/** Packs the entries into a file for this user alone, which has its name only once it is whole. */
export async function packFile(file: string, entries: AsyncIterable<ZipEntry>): Promise<void> {
  const fresh = `${file}.new`
  await onDisk(file, async () => {
    mkdirSync(dirname(file), { recursive: true })
    try {
      const handle = await open(fresh, 'w', 0o600)
      try {
        await packZip(entries, bytes => handle.writeFile(bytes))
        await handle.sync()
      } finally {
        await handle.close()
      }
      moveWhole(fresh, file)
    } finally {
      rmSync(fresh, { force: true })
    }
  })
}
