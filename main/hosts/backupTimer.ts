import { backupTick, copyingEnds } from '../services/backup/copying.ts'
import type { Desk } from '../services/desk/desk.ts'
import { speakingForShop } from '../services/desk/speaking.ts'
import { readingOverEnds } from '../store/backup/readOver.ts'

const everyMs = 60_000
/** Not while the first screen is still being drawn. */
const firstAfterMs = 10_000
/** How long closing waits for a copy or a reading under way; half a copy is swept away by the next one. */
const patienceMs = 5_000

/** Looks after the copies every minute; returns the way to stop, before the store is closed. */
export function startBackups(desk: Desk, onFault: (error: unknown) => void): () => Promise<void> {
  const look = () => void speakingForShop(desk, () => backupTick(desk)).catch(onFault)
  const first = setTimeout(look, firstAfterMs)
  const timer = setInterval(look, everyMs)
  first.unref()
  timer.unref()
  return async () => {
    clearTimeout(first)
    clearInterval(timer)
    const late = new Promise<void>(resolve => setTimeout(resolve, patienceMs).unref())
    const { store } = desk
    await Promise.race([Promise.all([copyingEnds(store), readingOverEnds(store.source.file)]), late])
  }
}
