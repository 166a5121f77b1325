/** Copies that make themselves: what the host asks for every minute, and what a person may ask for at once. */

import { copyIsDue, drillIsDue } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { readComputer } from '../../store/backup/computer.ts'
import {
  type CopyFile,
  copiesDir,
  lookThrough,
  makeCopy,
  thinOut,
  type UnreadCopy,
} from '../../store/backup/copies.ts'
import { readErased } from '../../store/backup/erasedList.ts'
import { carryErased, carryTo, copiesIn } from '../../store/backup/secondPlace.ts'
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { findShop } from '../desk/shopView.ts'
import { tryCopy } from './drill.ts'
import { dataDirOf, passphraseOf } from './settings.ts'

/** What this run of the app knows of its copies. */
interface Known {
  /** The one copying under way; there is never a second. */
  working: Promise<void> | null
  /** When something last failed, and why; null: it did not. */
  failed: { at: number; words: string } | null
  /** Of the second place, as it was last seen. */
  place: { path: string; newestAt: number | null; problem: string | null; at: number } | null
}

const knownOf = new WeakMap<Store, Known>()

export function knownCopies(store: Store): Known {
  const known = knownOf.get(store) ?? { working: null, failed: null, place: null }
  knownOf.set(store, known)
  return known
}

/** Minutes between two tries of what failed. */
const againAfter = 15

/**
 * What the host does every minute: makes a copy where one is due, carries it to the second place, thins out, and tries
 * one a month. Answers once all is done; what fails is said on the screens and tried again later.
 */
export function backupTick(desk: Desk): Promise<void> {
  return alone(desk.store, async known => {
    const shop = await findShop(desk.store.read)
    if (!shop) return
    const nowAt = desk.now()
    const dataDir = dataDirOf(desk)
    const resting = (at: number | undefined) => at !== undefined && nowAt >= at && nowAt - at < againAfter
    const copies = await ownCopies(desk)
    if (
      copyIsDue(
        copies.map(copy => copy.madeAt),
        nowAt,
      ) &&
      !resting(known.failed?.at)
    )
      await copyNow(desk, known, shop.zone)
    const place = readComputer(dataDir).place
    if (place !== null) {
      const seen = known.place?.path === place ? known.place : null
      const newest = (await ownCopies(desk))[0]
      const behind =
        !seen || seen.problem !== null || (newest !== undefined && seen.newestAt !== newest.madeAt)
      if (behind && !(seen?.problem && resting(seen.at))) await carry(desk, known, place, shop.zone)
    } else known.place = null
    const oldest = (await ownCopies(desk)).at(-1)
    if (oldest && drillIsDue(readComputer(dataDir).drill?.at ?? null, oldest.madeAt, nowAt))
      await tryCopy(desk)
  })
}

/** Makes a copy at once, here and in the second place; refuses in words where it could not be made here. */
export async function copyAtOnce(desk: Desk): Promise<void> {
  await alone(desk.store, async known => {
    const shop = await findShop(desk.store.read)
    if (!shop) return
    known.failed = null
    await copyNow(desk, known, shop.zone)
    const place = readComputer(dataDirOf(desk)).place
    if (place !== null) await carry(desk, known, place, shop.zone)
  })
  const { failed } = knownCopies(desk.store)
  if (failed) throw new Refusal('copy-failed', '', null, failed.words)
}

/** Waits for the copying under way: the host closes the database after it. */
export async function copyingEnds(store: Store): Promise<void> {
  await knownCopies(store).working?.catch(() => {})
}

/**
 * The copies of this shop on this computer, newest first, without those made before a restore. A folder that cannot be
 * looked into has none; making the next copy then says why.
 */
export async function ownCopies(desk: Pick<Desk, 'store'>): Promise<CopyFile[]> {
  return (await ownFolder(desk)).copies
}

/** The same, and what lies there that should be a copy and cannot be read. */
export async function ownFolder(
  desk: Pick<Desk, 'store'>,
): Promise<{ copies: CopyFile[]; unread: UnreadCopy[] }> {
  const { shopId } = desk.store.source
  const { copies, unread } = await lookThrough(copiesDir(dataDirOf(desk))).catch(() => ({
    copies: [],
    unread: [],
  }))
  return { copies: copies.filter(copy => !copy.beforeRestore && copy.shopId === shopId), unread }
}

async function alone(store: Store, work: (known: Known) => Promise<void>): Promise<void> {
  const known = knownCopies(store)
  const before = known.working
  const mine = (before ?? Promise.resolve()).catch(() => {}).then(() => work(known))
  known.working = mine
  await mine.finally(() => {
    if (known.working === mine) known.working = null
  })
}

async function copyNow(desk: Desk, known: Known, zone: string): Promise<void> {
  const at = desk.now()
  const { file, shopId } = desk.store.source
  try {
    desk.store.assertThere()
    await makeCopy(file, { at, passphrase: passphraseOf(desk) })
    await thinOut(copiesDir(dataDirOf(desk)), shopId, at, zone)
    known.failed = null
  } catch (error) {
    known.failed = { at, words: wordsOf(error) }
  }
}

/** Brings the second place up to the newest copy here. */
async function carry(desk: Desk, known: Known, place: string, zone: string): Promise<void> {
  const at = desk.now()
  const { shopId } = desk.store.source
  const [newest] = await ownCopies(desk)
  try {
    const there = await copiesIn(place, shopId)
    await carryErased(place, await readErased(copiesDir(dataDirOf(desk))))
    if (newest && !there.some(copy => copy.name === newest.name)) {
      await carryTo(place, newest)
      await thinOut(place, shopId, at, zone)
    }
    known.place = { path: place, newestAt: newest?.madeAt ?? there[0]?.madeAt ?? null, problem: null, at }
  } catch (error) {
    known.place = { path: place, newestAt: known.place?.newestAt ?? null, problem: wordsOf(error), at }
  }
}

function wordsOf(error: unknown): string {
  if (error instanceof Refusal) return error.message
  return say('The copy could not be made: {message}', {
    message: error instanceof Error ? error.message : String(error),
  })
}
