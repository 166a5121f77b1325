/*
 * A process that writes the morning's reminders and kills itself before the n-th write of that, commits counted. Run by
 * batchCrash.test.ts with the database, the minute it is, and n.
 */
import { migrationsDir } from '../../../main/hosts/build.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { openStore } from '../../../main/store/store.ts'
import { dyingStore } from '../dyingStore.ts'

const [file, nowAt, killAt] = process.argv.slice(2)
const { store, writes } = dyingStore(await openStore(file!, { dir: migrationsDir }), Number(killAt))
await prepareBatch({ store, now: () => Number(nowAt), who: 'front desk' })
console.log(writes())
await store.close()
