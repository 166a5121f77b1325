import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'

export interface StaticFile {
  bytes: Uint8Array<ArrayBuffer>
  type: string
  /** The same by gzip, where the build laid it beside. */
  gzip?: Uint8Array<ArrayBuffer>
  /** Named by its content, so it may be kept for good. */
  hashed: boolean
}

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
}

/**
 * The built renderer in memory, by path. Only what was there at start is ever served, so no path can reach outside
 * the folder.
 */
export function loadRenderer(dir: string): Map<string, StaticFile> {
  const files = new Map<string, StaticFile>()
  // Folder by folder, not with Node's own recursion: the shell's archive answers only plain listings for sure.
  const add = (folder: string, path: string) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const file = join(folder, entry.name)
      if (entry.isDirectory()) add(file, `${path}${entry.name}/`)
      else if (entry.isFile())
        files.set(path + entry.name, {
          bytes: new Uint8Array(readFileSync(file)),
          type: types[extname(entry.name)] ?? 'application/octet-stream',
          hashed: path.startsWith('/assets/'),
        })
    }
  }
  add(dir, '/')
  for (const [path, { bytes }] of files) {
    const plain = path.endsWith('.gz') && files.get(path.slice(0, -3))
    if (!plain) continue
    plain.gzip = bytes
    files.delete(path)
  }
  return files
}
