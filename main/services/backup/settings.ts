/** Where the copies of this shop go, and how they are locked. */

import { dirname } from 'node:path'
import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { readComputer, writeComputer } from '../../store/backup/computer.ts'
import { beginPlace, onSameDisk } from '../../store/backup/secondPlace.ts'
import { assertFresh } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { CopiesInput } from './inputs.ts'

export interface CopiesSettings {
  place: string | null
  /** Copies are locked with a passphrase, which is never given back. */
  locked: boolean
  version: number
}

const passphraseName = 'copies'
/** A guesser with the file at hand has all the time there is. */
const leastPassphrase = 12

export const dataDirOf = (desk: Pick<Desk, 'store'>): string => dirname(desk.store.source.file)

/** The passphrase copies are locked with; null: they are not. */
export function passphraseOf({ store }: { store: Pick<Desk['store'], 'secrets'> }): string | null {
  return store.secrets.get(passphraseName)
}

export function copiesSettings(desk: Desk): CopiesSettings {
  const { place, version } = readComputer(dataDirOf(desk))
  return { place, locked: passphraseOf(desk) !== null, version }
}

/** Names the second place and the passphrase. Refuses a place that is not there or cannot be written. */
export async function saveCopiesSettings(
  desk: Desk,
  input: CopiesInput,
): Promise<CopiesSettings & { sameDisk: boolean }> {
  const dataDir = dataDirOf(desk)
  const place = input.place?.trim() || null
  const { passphrase } = input
  if (typeof passphrase === 'string' && passphrase.length < leastPassphrase)
    refuse(
      'passphrase-short',
      { passphrase: null },
      say(
        'Take at least {leastPassphrase} characters: four words that do not belong together are easy to keep.',
        { leastPassphrase },
      ),
    )
  if (place !== null && place !== readComputer(dataDir).place) await beginPlace(place, dataDir)
  await act(desk, async (_tx, audit) => {
    const before = readComputer(dataDir)
    if (before.version !== input.version) assertFresh(0, word('backup settings'), '1')
    const changed =
      passphrase === undefined ? {} : { passphrase: passphrase === null ? 'removed' : 'changed' }
    audit({ act: 'changed', entity: 'backups', entityId: '1', detail: { place, ...changed } })
    writeComputer(dataDir, { ...before, place, version: before.version + 1 })
    if (passphrase !== undefined) desk.store.secrets.set(passphraseName, passphrase)
  })
  return { ...copiesSettings(desk), sameDisk: place !== null && (await onSameDisk(place, dataDir)) }
}
