import { setTimeout as wait } from 'node:timers/promises'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { importStands } from '../../../main/services/imports/importing.ts'

/** Waits until nothing is looked through or taken in any more. */
export async function importingEnds(desk: Desk): Promise<void> {
  while (importStands(desk).working) await wait(2)
}
