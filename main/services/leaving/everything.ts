/** Everything the shop keeps as one file to take along: packed beside the desk, then offered for a day. */
import { createReadStream, rmSync, statSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { dateOf } from '../../domain/calendar/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import type { Store } from '../../store/store.ts'
import { packFile } from '../../store/tables/packFile.ts'
import { readTables } from '../../store/tables/readTables.ts'
import { dataDirOf } from '../backup/settings.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { packedFiles } from './packed.ts'

/** What this run of the app knows of the file it packs; one that an earlier run left is known by its own time. */
interface Packing {
  done: number
  total: number
  stopped: boolean
  failed: string | null
  work: Promise<void> | null
}

const packings = new WeakMap<Store, Packing>()

const fileOf = (desk: Desk) => join(dataDirOf(desk), 'leaving', 'everything.zip')

/** Hours the file is kept: it holds what the database holds, without its lock. */
const keptMs = 24 * 3_600_000

/** How the file stands: packed so far, ready, or why there is none. */
export function everythingStands(desk: Desk) {
  const packing = packings.get(desk.store)
  const working = packing?.work !== null && packing !== undefined
  const file = working ? null : readyFile(desk)
  return {
    working: working ? { done: packing.done, total: packing.total } : null,
    ready: file && { bytes: file.size, madeAt: Math.floor(file.mtimeMs / 60_000) },
    failed: packing?.failed ?? null,
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
  if (packings.get(desk.store)?.work) return
  const packing: Packing = { done: 0, total: 0, stopped: false, failed: null, work: null }
  packings.set(desk.store, packing)
  packing.work = pack(desk, packing)
    .catch((error: unknown) => {
      if (packing.stopped) return
      packing.failed =
        error instanceof Refusal ? error.message : `The file could not be made: ${String(error)}`
    })
    .finally(() => {
      packing.work = null
    })
}

async function pack(desk: Desk, packing: Packing): Promise<void> {
  await act(desk, async (_tx, audit) => audit({ act: 'data packed', entity: 'shop', entityId: '1' }))
  const read = readTables(desk.store.source.file)
  try {
    // Every row is written twice: into its list, and into the one JSON.
    packing.total = 2 * read.tables.reduce((sum, table) => sum + read.count(table), 0)
    const onRows = (count: number) => {
      if (packing.stopped) throw new Error('stopped')
      packing.done += count
    }
    const nowAt = desk.now()
    await packFile(fileOf(desk), packedFiles({ read, nowAt, onRows }))
    utimesSync(fileOf(desk), nowAt * 60, nowAt * 60)
  } finally {
    read.close()
  }
}

/** Stops the packing under way and waits until it has let the database go. */
export async function stopPacking(store: Store): Promise<void> {
  const packing = packings.get(store)
  if (!packing?.work) return
  packing.stopped = true
  await packing.work
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
      'There is no such file any more: make it again under Settings, Your data.',
    )
  const { name, zone } = await shopOf(desk.store.read)
  return {
    name: `${name} ${dateOf(file.madeAt, zone)}.zip`,
    type: 'application/zip',
    keep: true,
    bytes: Readable.toWeb(createReadStream(fileOf(desk))) as ReadableStream<Uint8Array>,
  }
}
