import { existsSync } from 'node:fs'
import { setFlagsFromString } from 'node:v8'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import type { Desk } from '../services/desk/desk.ts'
import { sweepPhotos } from '../services/intake/photos.ts'
import { eraseAgain } from '../services/leaving/eraseAgain.ts'
import { assertSameShop, markedShop, markShop, newestCopyWords, shopIn } from '../store/backup/marker.ts'
import { noteAtStart, readOver } from '../store/backup/readOver.ts'
import { checkIntegrity } from '../store/integrity.ts'
import type { MigrationFiles } from '../store/migrate.ts'
import { openStore } from '../store/store.ts'
import { startClock } from './clock.ts'
import { type Claim, databaseFile, logOf } from './dataFolder.ts'
import { restoreFirst } from './restoreFirst.ts'
import { layForeignJournalAside, layForeignLogAside, layStrayLogAside } from './strayLog.ts'

/**
 * Garbage is collected once the heap has grown by half. On a machine with memory to spare the engine would let it grow to
 * three times what is used: after all screens of a shop of ten years 540 MB instead of 460, for a twentieth less work.
 */
export function holdHeap(): void {
  setFlagsFromString('--heap-growing-percent=50')
}

export interface ShopOptions {
  dataDir: string
  /** Fill an empty database with the demo shop. */
  demo: boolean
  /** The copy to restore before anything else; null: none. */
  restore: string | null
  migrations: MigrationFiles
  /** Told in words what is being done. */
  say: (words: string) => void
}

/**
 * Opens the shop of a claimed data folder: puts a restored copy in its place, looks it over after a crash, brings it up
 * to date, fills the demo in. A start that is refused leaves the folder as it was found.
 */
export async function openShop(claim: Claim, options: ShopOptions): Promise<Desk> {
  holdHeap()
  try {
    return await open(claim, options)
  } catch (error) {
    claim.refuse()
    if (!(error instanceof Refusal) || error.code !== 'database-damaged') throw error
    const wayOut = await newestCopyWords(options.dataDir, markedShop(options.dataDir) ?? undefined)
    throw new Refusal(
      error.code,
      error.field,
      error.value,
      say('{words} Or restore a copy: {wayOut}', { words: error.message, wayOut }),
    )
  }
}

async function open(claim: Claim, options: ShopOptions): Promise<Desk> {
  const { dataDir, demo, migrations, say: tell } = options
  const file = databaseFile(dataDir)
  const now = startClock(process.env)
  const restored = await restoreFirst(file, { ...options, now })
  // Looked for before anything reads the database, which begins a new one.
  const logGone = !restored && claim.wasOpen && !existsSync(logOf(file))
  const marked = markedShop(dataDir)
  if (!restored) layForeignJournalAside(file, { unclean: claim.unclean, marked }, tell)
  if (!restored && !claim.unclean) layStrayLogAside(file, tell)
  if (!restored && claim.unclean && marked !== null)
    layForeignLogAside(file, () => shopIn(file) === marked, tell)
  await assertSameShop(file)
  if (!restored && claim.unclean) lookOver(file, logGone, tell)
  const desk: Desk = { store: await openStore(file, migrations), now, who: 'front desk' }
  try {
    markShop(dataDir, desk.store.source.shopId)
    claim.opened()
    makeKey(desk)
    if (demo) await fillIn(desk, tell)
    const erased = await eraseAgain(desk)
    await sweepPhotos(desk)
    if (erased > 0)
      tell(say('Erased before, and back with an older copy, was erased again: {erased}.', { erased }))
  } catch (error) {
    await desk.store.close()
    throw error
  }
  if (!claim.unclean) void readOver(file)
  return desk
}

/** The key that proves certificates is there from the first start on, so that every copy has it. */
function makeKey({ store: { signer } }: Desk): void {
  try {
    signer.key()
  } catch {
    // One that cannot be read is told of where a certificate is asked for; the desk opens all the same.
  }
}

async function fillIn(desk: Desk, tell: (words: string) => void): Promise<void> {
  if ((await desk.store.read.shop.count()) > 0)
    return tell(say('The database already holds a shop: --demo changed nothing.'))
  // Not loaded unless asked for: an invented shop is no part of a real one.
  const { fillDemo } = await import('../services/demo/index.ts')
  await fillDemo(desk)
}

/** Reads over what an app left behind that ended without closing. */
function lookOver(file: string, logGone: boolean, tell: (words: string) => void): void {
  tell(say('Lustrum was not closed properly last time: looking the database over.'))
  const sound = () => {
    checkIntegrity(file)
    return true
  }
  if (!layForeignLogAside(file, sound, tell)) checkIntegrity(file)
  if (!logGone) {
    tell(say('The database is sound.'))
    return
  }
  const words = say(
    "The log {log}, which held what was saved last before Lustrum ended, is missing: the last changes may be missing too. Look at today's jobs; if the log is found, close Lustrum, put it back and start again.",
    { log: logOf(file) },
  )
  noteAtStart(file, words)
  tell(words)
}
