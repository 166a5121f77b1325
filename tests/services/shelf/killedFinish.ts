/*
 * A process that finishes a step with its draw and kills itself before the n-th write inside that
 * transaction, the commit being the last. Run by crash.test.ts with the database, the act as JSON, and n.
 */
import { migrationsDir } from '../../../main/hosts/build.ts'
import { finishStep } from '../../../main/services/job/jobSteps.ts'
import { openStore } from '../../../main/store/store.ts'
import { dyingStore } from '../dyingStore.ts'

const [file, act, killAt] = process.argv.slice(2)
const { nowAt, ...input } = JSON.parse(act!) as Parameters<typeof finishStep>[1] & { nowAt: number }
const { store, writes } = dyingStore(await openStore(file!, { dir: migrationsDir }), Number(killAt))
await finishStep({ store, now: () => nowAt, who: 'front desk' }, input)
console.log(writes())
await store.close()
