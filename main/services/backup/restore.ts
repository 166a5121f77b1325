/** From a copy back to a shop: found, looked into beside what is here, and made ready for the next start. */

import { statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { type Holdings, holdingsWords, momentWords } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { type CopyFile, copiesDir, lookThrough, type UnreadCopy } from '../../store/backup/copies.ts'
import { type CopyHeader, readPhotoList } from '../../store/backup/copyFormat.ts'
import { addErased, readErased } from '../../store/backup/erasedList.ts'
import { holdingsOf } from '../../store/backup/holdings.ts'
import { photosIn, poolsDir } from '../../store/backup/photoPool.ts'
import { readContent } from '../../store/backup/readCopy.ts'
import { layOut, type ReadyCopy, readyCopy, sayReady, takeBack } from '../../store/backup/restoring.ts'
import { diskRefusal } from '../../store/diskWords.ts'
import { openStore } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import type { Desk } from '../desk/desk.ts'
import { holdReminders } from './held.ts'
import type { CopyInput, RestoreInput } from './inputs.ts'
import { dataDirOf, passphraseOf } from './settings.ts'

export type CopyView = Pick<CopyFile, 'path' | 'name' | 'madeAt' | 'locked' | 'beforeRestore' | 'bytes'>

const viewOf = ({ path, name, madeAt, locked, beforeRestore, bytes }: CopyFile): CopyView => ({
  path,
  name,
  madeAt,
  locked,
  beforeRestore,
  bytes,
})

/** What lies in a folder of copies: those that can be read, newest first, and what else ends as a copy does. */
export interface CopiesFound {
  copies: CopyView[]
  unread: UnreadCopy[]
}

/** Copies of this data folder, and the one the next start will open. */
export async function copiesHere(desk: Desk): Promise<CopiesFound & { ready: ReadyCopy | null }> {
  const dataDir = dataDirOf(desk)
  const { copies, unread } = await lookThrough(copiesDir(dataDir))
  return { copies: copies.map(viewOf), unread, ready: readyCopy(dataDir) }
}

/** The copies that lie in a folder, or the one that is the file named. Refuses where there are none. */
export async function findCopies(input: { path: string }): Promise<CopiesFound> {
  const path = input.path.trim().replace(/^"(.*)"$/, '$1')
  if (path === '') refuse('path-bad', { path }, say('Enter the folder the copies lie in.'))
  try {
    const isFolder = statSync(path).isDirectory()
    const found = await lookThrough(isFolder ? path : dirname(path))
    const asked = (file: { path: string }) => isFolder || file.path === path
    const [copies, unread] = [found.copies.filter(asked), found.unread.filter(asked)]
    if (copies.length + unread.length > 0) return { copies: copies.map(viewOf), unread }
  } catch (error) {
    throw diskRefusal(error, path)
  }
  return refuse(
    'path-bad',
    { path },
    say('There is no copy of a shop in {path}: choose another folder.', { path }),
  )
}

export interface CopyLook {
  madeAt: number
  /** What it holds, and what is here now. */
  there: Holdings
  here: Holdings
  lines: string[]
}

/** What a copy holds beside what is here. Only its list is read; `stageRestore` reads it all. */
export async function lookIntoCopy(desk: Desk, input: CopyInput): Promise<CopyLook> {
  const { header, content } = await readContent(input.path, passphraseFor(desk, input)).catch(error => {
    throw diskRefusal(error, input.path)
  })
  const { holdings: there } = content
  const here = await holdingsOf(desk.store.read)
  const nowAt = desk.now()
  const told = (what: Holdings, from: string) => {
    if (!what.shop) return say('{from}: no shop.', { from })
    const zone = what.shop.zone
    const last = what.lastJob
      ? say('; last job {number}, {dropOffAt}', {
          number: what.lastJob.number,
          dropOffAt: momentWords(what.lastJob.dropOffAt, { nowAt, zone }),
        })
      : ''
    const saved =
      what.lastSavedAt === null
        ? ''
        : say('; last change {lastSavedAt}', { lastSavedAt: momentWords(what.lastSavedAt, { nowAt, zone }) })
    return `${from}: ${what.shop.name}, ${holdingsWords(what)}${last}${saved}.`
  }
  return {
    madeAt: header.madeAt,
    there,
    here,
    lines: [
      told(there, say('In the copy')),
      ...(await photoLines(input.path, header)),
      told(here, say('Here now')),
    ],
  }
}

/** How many photos a copy has; and where some do not lie beside it, how to have them. */
async function photoLines(path: string, { photos }: CopyHeader): Promise<string[]> {
  if (!photos || photos.count === 0) return []
  const held = await photosIn({ dir: join(poolsDir(dirname(path)), photos.pool) })
  const missing = (await readPhotoList(path)).filter(sha256 => !held.has(sha256)).length
  const { count } = photos
  return [
    missing === 0
      ? say('{count} {count, plural, one {photo lies} other {photos lie}} beside it.', { count })
      : say(
          'Of its {count} photos {missing} do not lie beside it: put the folder “photos” that belongs to it into the same folder, or they are looked for in what is here.',
          { count, missing },
        ),
  ]
}

/**
 * Unpacks a copy, reads it over, brings it up to date and holds its reminders; the next start opens it, and keeps what
 * is here as a copy first. Asks first where a shop is here.
 */
export async function stageRestore(desk: Desk, input: RestoreInput): Promise<ReadyCopy> {
  const { lines, here } = await lookIntoCopy(desk, input)
  askFirst('restores', here.shop ? lines : [], {
    field: 'path',
    lead: say(
      'The copy takes the place of what is here when Lustrum starts next. What is here then is kept as a copy first.',
    ),
    accepted: input.accepted,
  })
  return prepareRestore(desk, input)
}

/** The same without a question, and without a shop to be open: `npm start -- --restore`. */
export async function prepareRestore(
  desk: Pick<Desk, 'now' | 'who'> & { store: Pick<Desk['store'], 'source' | 'secrets'> },
  input: CopyInput,
): Promise<ReadyCopy> {
  const dataDir = dirname(desk.store.source.file)
  const { header, content, file, photosMissing } = await layOut(
    dataDir,
    input.path,
    passphraseFor(desk, input),
  )
  try {
    const store = await openStore(file, desk.store.source.migrations)
    try {
      await holdReminders({ ...desk, store }, header.madeAt)
    } finally {
      await store.close()
    }
    const ready = {
      shopId: header.shopId,
      madeAt: header.madeAt,
      shopName: content.holdings.shop?.name ?? '',
      ...(photosMissing > 0 ? { photosMissing } : {}),
    }
    await addErased(copiesDir(dataDir), await readErased(dirname(input.path)))
    sayReady(dataDir, ready)
    return ready
  } catch (error) {
    takeBack(dataDir)
    throw error
  }
}

/** The copy that was made ready is not opened after all. */
export function cancelRestore(desk: Desk): void {
  takeBack(dataDirOf(desk))
}

/** The passphrase entered, or the one of this computer. */
function passphraseFor(
  desk: { store: Pick<Desk['store'], 'secrets'> },
  { passphrase }: CopyInput,
): string | null {
  return passphrase?.trim() ? passphrase : passphraseOf(desk)
}
