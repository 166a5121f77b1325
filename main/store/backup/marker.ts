import { existsSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { inPlainWords } from '../integrity.ts'
import { writeWhole } from '../wholeFile.ts'
import { copiesDir, listCopies, lookThrough } from './copies.ts'
import { shopIdOf } from './inspect.ts'

const markerFile = (dataDir: string) => join(dataDir, 'shop.json')

/** The shop this data folder belongs to; null where it has not been used yet. */
export function markedShop(dataDir: string): string | null {
  try {
    const { shopId } = JSON.parse(readFileSync(markerFile(dataDir), 'utf8')) as { shopId?: unknown }
    return typeof shopId === 'string' ? shopId : null
  } catch {
    return null
  }
}

/** Says beside the database whose folder this is. */
export function markShop(dataDir: string, shopId: string): void {
  if (markedShop(dataDir) !== shopId) writeWhole(markerFile(dataDir), JSON.stringify({ shopId }))
}

/** The shop whose database a file is; null where there is none, or it has had no migration yet. */
export function shopIn(file: string): string | null {
  if (!existsSync(file) || statSync(file).size === 0) return null
  return inPlainWords(file, () => {
    const database = new Database(file, { readonly: true })
    try {
      return shopIdOf(database)
    } finally {
      database.close()
    }
  })
}

/**
 * Refuses where a folder that has been used holds no database any more, an empty one, or another shop's: a new one in
 * its place would look like ten years gone.
 */
export async function assertSameShop(file: string): Promise<void> {
  const dataDir = dirname(file)
  const marked = markedShop(dataDir)
  const found = shopIn(file)
  const missing = found === null && (marked !== null || (await wasUsed(dataDir)))
  const another = found !== null && marked !== null && found !== marked
  if (!missing && !another) return
  const what =
    found !== null
      ? say("The database {file} is another shop's than the one this folder belongs to.", { file })
      : existsSync(file)
        ? say('The database {file} is empty.', { file })
        : say('The database {file} is not there any more.', { file })
  throw new Refusal(
    'database-missing',
    'database',
    file,
    say(
      '{what} Nothing was changed and no new one was begun. Put the right file back, or restore a copy: {copy} A new shop goes into a data folder of its own: name one with --data.',
      { what, copy: await newestCopyWords(dataDir, marked ?? undefined) },
    ),
  )
}

/** Whether a folder without a mark that can be read has been used all the same: the mark may have gone with the database. */
async function wasUsed(dataDir: string): Promise<boolean> {
  if (existsSync(markerFile(dataDir))) return true
  const { copies, unread } = await lookThrough(copiesDir(dataDir)).catch(() => ({ copies: [], unread: [] }))
  return copies.length + unread.length > 0
}

/** Which copy to start with, in words. */
export async function newestCopyWords(dataDir: string, shopId: string | undefined): Promise<string> {
  const [newest] = await listCopies(copiesDir(dataDir), shopId).catch(() => [])
  return newest
    ? say('start Lustrum with --restore "{path}".', { path: newest.path })
    : say('start Lustrum with --restore and the path of a copy from your second place.')
}
