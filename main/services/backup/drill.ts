/** The drill: a copy is unpacked and opened as a restore would, in the background, so that nobody finds out when it counts. */

import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { holdingsWords, momentWords } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { readComputer, writeComputer } from '../../store/backup/computer.ts'
import { type CopyFile, copiesDir, listCopies } from '../../store/backup/copies.ts'
import { databaseName, readPhotoList } from '../../store/backup/copyFormat.ts'
import { inspectBeside } from '../../store/backup/inspectBeside.ts'
import { isWhole, poolOf, takeOut } from '../../store/backup/photoPool.ts'
import { unpackCopy } from '../../store/backup/readCopy.ts'
import { openStore } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { dataDirOf, passphraseOf } from './settings.ts'

/** Opens the newest copy that is a day old, or the oldest there is, counts what it holds, and keeps what came of it. */
export async function tryCopy(desk: Desk): Promise<void> {
  const dataDir = dataDirOf(desk)
  const { store } = desk
  const nowAt = desk.now()
  const { zone } = await shopOf(store.read)
  const copies = await listCopies(copiesDir(dataDir), store.source.shopId)
  const copy = copies.find(each => nowAt - each.madeAt >= 24 * 60) ?? copies.at(-1)
  if (!copy) return
  const dir = join(copiesDir(dataDir), 'drill')
  const when = momentWords(copy.madeAt, { nowAt, zone })
  const note = (opened: boolean, words: string) =>
    writeComputer(dataDir, { ...readComputer(dataDir), drill: { at: nowAt, opened, words } })
  rmSync(dir, { recursive: true, force: true })
  try {
    const { content } = await unpackCopy(copy.path, passphraseOf(desk), dir)
    const file = join(dir, databaseName)
    const { fault, tables, holdings } = await inspectBeside(file, 'hashed')
    const differs = Object.keys(content.tables).find(name => content.tables[name] !== tables[name])
    if (fault !== null || differs !== undefined)
      note(
        false,
        say('The copy of {when} does not open: {fault}.', {
          when,
          fault: fault ?? say('{differs} has not the rows it should', { differs }),
        }),
      )
    else {
      // As a restore would: an older copy is brought up to date first.
      await (await openStore(file, store.source.migrations)).close()
      const spoiled = await spoiledPhotos(copy, passphraseOf(desk))
      if (spoiled > 0)
        note(
          false,
          say(
            'The copy of {when} opens, but {spoiled} of its photos are damaged or gone. The next copy adds them anew where they are still here.',
            { when, spoiled },
          ),
        )
      else
        note(true, say('The copy of {when} opens: {holdings}.', { when, holdings: holdingsWords(holdings) }))
    }
  } catch (error) {
    if (!(error instanceof Error)) throw error
    note(
      false,
      say('The copy of {when} does not open. {message}', {
        when,
        message: error instanceof Refusal ? error.message : error,
      }),
    )
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}

/** How many of a copy's photos are not as they were, read from end to end; those go, so that the next copy adds them. */
async function spoiledPhotos({ path, photos }: CopyFile, passphrase: string | null): Promise<number> {
  if (!photos) return 0
  const pool = await poolOf(dirname(path), photos, passphrase)
  const sha256s = await readPhotoList(path)
  if (!pool) return sha256s.length
  let spoiled = 0
  for (const sha256 of sha256s) {
    if (await isWhole(pool, sha256)) continue
    await takeOut(pool, sha256)
    spoiled++
  }
  return spoiled
}
