import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { FileToCopy } from './writeCopy.ts'

/**
 * What lies beside the database and goes along with its copies: folders of files, and small files of keys and the
 * like, without those that belong to this computer or this run alone. Passwords stay where they are. Photos lie beside
 * the copies instead (photoPool.ts).
 */
const folders = ['files', 'keys']
const photos = 'files/photos'
const stays = ['backups.json', 'door.json', 'restore.json', 'running.json', 'secrets.json', 'shop.json']

/** The files of a data folder that a copy carries besides the database. */
export function filesBeside(dataDir: string): FileToCopy[] {
  const found: FileToCopy[] = []
  const take = (folder: string, prefix: string, depth: number) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const name = prefix + entry.name
      const path = join(folder, entry.name)
      if (name === photos) continue
      if (entry.isDirectory() && depth > 0 && (prefix !== '' || folders.includes(name)))
        take(path, `${name}/`, depth - 1)
      else if (entry.isFile() && (prefix !== '' || (name.endsWith('.json') && !stays.includes(name))))
        found.push({ name, path })
    }
  }
  take(dataDir, '', 3)
  return found.sort((a, b) => (a.name < b.name ? -1 : 1))
}
