import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/**
 * Writes a small file beside its place and moves it there, on the disk before this returns: a crash or a full disk
 * leaves the old file or the new one, never half of one. This user alone may read it.
 */
export function writeWhole(file: string, text: string): void {
  const fresh = `${file}.new`
  rmSync(fresh, { force: true })
  try {
    writeFileSync(fresh, text, { mode: 0o600 })
    flush(fresh)
    moveWhole(fresh, file)
  } finally {
    rmSync(fresh, { force: true })
  }
}

/** Moves a file that is on the disk already into its place, and waits until the folder says so too. */
export function moveWhole(from: string, to: string): void {
  renameSync(from, to)
  // Windows has no way to flush a folder, and its file system keeps a log of moves.
  if (process.platform !== 'win32') flush(dirname(to), 'r')
}

/** Waits until what was written to the file, or which names a folder has, is on the disk. */
export function flush(path: string, flags: 'r' | 'r+' = 'r+'): void {
  const handle = openSync(path, flags)
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}
