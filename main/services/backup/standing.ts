/** How the copies stand, for the settings and for the first screen. */

import { copiesStand, type Warning } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { readComputer } from '../../store/backup/computer.ts'
import type { UnreadCopy } from '../../store/backup/copies.ts'
import { lastSavedAt } from '../../store/backup/holdings.ts'
import { foundDamage } from '../../store/backup/readOver.ts'
import type { Desk } from '../desk/desk.ts'
import { findShop } from '../desk/shopView.ts'
import { knownCopies, ownFolder } from './copying.ts'
import { erasedBackWords } from './erasedBack.ts'
import { heldWords } from './held.ts'
import { dataDirOf } from './settings.ts'

export interface CopiesStanding {
  /** When the last good copy was made, and where it lies. */
  line: string
  /** What came of the last copy that was tried; null: none was tried yet. */
  drill: string | null
  warnings: Warning[]
}

export async function copiesStanding(desk: Desk): Promise<CopiesStanding> {
  const { store } = desk
  const gone = goneWords(desk)
  if (gone !== null) return { line: '', drill: null, warnings: said('data', gone) }
  const shop = await findShop(store.read)
  if (!shop) return { line: '', drill: null, warnings: [] }
  const nowAt = desk.now()
  const { zone } = shop
  const { copies, unread } = await ownFolder(desk)
  const { failed, place: seen } = knownCopies(store)
  const { place, drill } = readComputer(dataDirOf(desk))
  const newestAt = copies[0]?.madeAt ?? null
  const { line, warnings } = copiesStand({
    nowAt,
    zone,
    oldestAt: copies.at(-1)?.madeAt ?? null,
    newestAt,
    problem: failed?.words ?? null,
    // Not looked into yet, it is taken to be in order: the first look comes within a minute.
    place: place === null ? null : seen?.path === place ? seen : { path: place, newestAt, problem: null },
    lastSavedAt: await lastSavedAt(store.read),
  })
  const held = await heldWords(store.read, nowAt, zone)
  const damage = foundDamage(store.source.file)
  return {
    line,
    drill: drill?.words ?? null,
    warnings: [
      ...said('data', damage),
      ...warnings,
      ...said('copies', unreadWords(unread)),
      ...said('copies', drill && !drill.opened ? drill.words : null),
      ...said('restored', held),
      ...said('restored', await erasedBackWords(desk, zone)),
    ],
  }
}

/** On copies here that cannot be read; null: there are none. */
function unreadWords(unread: readonly UnreadCopy[]): string | null {
  const [first, ...others] = unread
  if (!first) return null
  const more =
    others.length === 0 ? '' : ` ${say('The same goes for {others} more.', { others: others.length })}`
  return say('{words}{more} They are listed in the settings, under Backups; delete what you do not need.', {
    words: first.words,
    more,
  })
}

function said(about: Warning['about'], words: string | null): Warning[] {
  return words === null ? [] : [{ about, words }]
}

function goneWords({ store }: Desk): string | null {
  try {
    store.assertThere()
    return null
  } catch (error) {
    if (error instanceof Refusal) return error.message
    throw error
  }
}
