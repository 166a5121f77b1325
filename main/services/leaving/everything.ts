/** Everything the shop keeps as one file to take along: packed beside the desk, then offered for a day. */

import { createReadStream, rmSync, statSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { dateOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Store } from '../../store/store.ts'
import { packFile } from '../../store/tables/packFile.ts'
import { readTables } from '../../store/tables/readTables.ts'
import { dataDirOf } from '../backup/settings.ts'
import { besideDesk, type Pace } from '../desk/beside.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { packedFiles } from './packed.ts'

const packing = besideDesk<void>(error =>
  say('The file could not be made: {error}', { error: String(error) }),
)

const fileOf = (desk: Desk) => join(dataDirOf(desk), 'leaving', 'everything.zip')

/** Hours the file is kept: it holds what the database holds, without its lock. */
const keptMs = 24 * 3_600_000

/** How the file stands: packed so far, ready, or why there is none. One that an earlier run left is ready too. */
export function everythingStands(desk: Desk) {
  const { working, failed } = packing.stands(desk.store)
  const file = working ? null : readyFile(desk)
  return {
    working,
    ready: file && { bytes: file.size, madeAt: Math.floor(file.mtimeMs / 60_000) },
    failed,
  }
}

function readyFile(desk: Desk) {
  const stat = statSync(fileOf(desk), { throwIfNoEntry: false })
  if (!stat) return null
  if (desk.now() * 60_000 - stat.mtimeMs <= keptMs) return stat
  forgetEverything(desk)
  return null
}

/** Begins to pack; answers at once. Whoever asks while it goes on is given the same. */
export function packEverything(desk: Desk): void {
  packing.begin(desk.store, pace => pack(desk, pace))
}

async function pack(desk: Desk, pace: Pace): Promise<void> {
  await act(desk, async (_tx, audit) => audit({ act: 'data packed', entity: 'shop', entityId: '1' }))
  const read = readTables(desk.store.source.file)
  try {
    // Every row is written twice: into its list, and into the one JSON.
    pace.total = 2 * read.tables.reduce((sum, table) => sum + read.count(table), 0)
    const nowAt = desk.now()
    await packFile(fileOf(desk), packedFiles({ read, nowAt, pace }))
    utimesSync(fileOf(desk), nowAt * 60, nowAt * 60)
  } finally {
    read.close()
  }
}

/** Stops the packing under way and waits until it has let the database go. */
export async function stopPacking(store: Store): Promise<void> {
  await packing.stop(store)
}

/** The file is not needed any more. */
export function forgetEverything(desk: Desk): void {
  rmSync(fileOf(desk), { force: true })
}

/** The file, read as it is sent. */
export async function everythingFile(desk: Desk) {
  const file = everythingStands(desk).ready
  if (!file)
    refuse(
      'missing',
      { file: null },
      say('There is no such file any more: make it again under Settings, Your data.'),
    )
  const { name, zone } = await shopOf(desk.store.read)
  return {
    name: `${name} ${dateOf(file.madeAt, zone)}.zip`,
    type: 'application/zip',
    keep: true,
    bytes: Readable.toWeb(createReadStream(fileOf(desk))) as ReadableStream<Uint8Array>,
  }
}
