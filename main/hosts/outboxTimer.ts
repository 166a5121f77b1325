import type { Desk } from '../services/desk/desk.ts'
import { speakingForShop } from '../services/desk/speaking.ts'
import { upkeepTick } from '../services/reminders/automatic.ts'
import { haltOutbox } from '../services/reminders/outboxRun.ts'

const everyMs = 60_000
/** How long closing waits for the message that is on its way; past that it counts as cut off. */
const patienceMs = 5_000

/** Looks after the outbox every minute, one look at a time; returns the way to stop, before the store is closed. */
export function startOutbox(desk: Desk, onFault: (error: unknown) => void): () => Promise<void> {
  let looking: Promise<void> | null = null
  const timer = setInterval(() => {
    looking ??= speakingForShop(desk, () => upkeepTick(desk))
      .catch(onFault)
      .finally(() => {
        looking = null
      })
  }, everyMs)
  timer.unref()
  return async () => {
    clearInterval(timer)
    const late = new Promise<void>(resolve => setTimeout(resolve, patienceMs).unref())
    await Promise.race([Promise.all([haltOutbox(desk.store), looking]), late])
  }
}
