/** Keeps an erasure where an older database takes the place of the one it was done in. */
import { Refusal } from '../../domain/refusal.ts'
import { erasedBack, listErased } from '../backup/erasedBack.ts'
import type { Desk } from '../desk/desk.ts'
import { erasePerson } from './erase.ts'

/**
 * At a start: notes beside the copies who was erased, and erases again who is back. Answers how many; who cannot be
 * erased now, since a car of theirs is booked, is said on the first screen until somebody does it.
 */
export async function eraseAgain(desk: Desk): Promise<number> {
  await listErased(desk)
  let erased = 0
  for (const { id, version } of await erasedBack(desk)) {
    try {
      await erasePerson(desk, { id, version, accepted: true })
      erased++
    } catch (error) {
      if (!(desk.store.explain(error) instanceof Refusal)) throw error
    }
  }
  return erased
}
