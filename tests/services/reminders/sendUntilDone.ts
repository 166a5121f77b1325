/** A process of its own that sends what is approved in a database, to be killed: file, then the minute it begins at. */
import { migrationsDir } from '../../../main/hosts/build.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { openStore } from '../../../main/store/store.ts'

const [file, from] = process.argv.slice(2)
const store = await openStore(file!, { dir: migrationsDir })
let nowAt = Number(from)
const desk = { store, now: () => nowAt, who: 'outbox' }
for (;;) {
  await runOutbox(desk)
  const left = await store.read.message.count({ where: { state: { in: ['approved', 'sending'] } } })
  if (left === 0) break
  // Those that were cut off wait half an hour for their next attempt.
  nowAt += 31
}
await store.close()
process.exit(0)
