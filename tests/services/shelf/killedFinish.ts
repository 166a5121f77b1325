/*
 * A process that finishes a step with its draw and kills itself before the n-th write inside that
 * transaction, the commit being the last. Run by crash.test.ts with the database, the act as JSON, and n.
 */
import { migrationsDir } from '../../../main/hosts/build.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { finishStep } from '../../../main/services/job/jobSteps.ts'
import { openStore, type Store, type Tx } from '../../../main/store/store.ts'

const [file, act, killAt] = process.argv.slice(2)
const { nowAt, ...input } = JSON.parse(act!) as Parameters<typeof finishStep>[1] & { nowAt: number }
const real = await openStore(file!, { dir: migrationsDir })
let writes = 0

function dieInTime(): void {
  writes += 1
  if (writes === Number(killAt)) process.kill(process.pid, 'SIGKILL')
}

/** The transaction's client, with every write counted before it reaches the database. */
function counted<T extends object>(target: T): T {
  return new Proxy(target, {
    get(of, name) {
      const value = Reflect.get(of, name) as unknown
      if (typeof value === 'function')
        return (...rest: unknown[]) => {
          if (/^(create|update|upsert|delete)/.test(String(name))) dieInTime()
          return (value as (...rest: unknown[]) => unknown).apply(of, rest)
        }
      return typeof value === 'object' && value !== null ? counted(value) : value
    },
  })
}

const store: Store = {
  ...real,
  transact: (stamp, work) =>
    real.transact(stamp, async (tx, audit) => {
      const result = await work(counted(tx as object) as Tx, audit)
      dieInTime()
      return result
    }),
}
const desk: Desk = { store, now: () => nowAt, who: 'front desk' }
await finishStep(desk, input)
console.log(writes)
await store.close()
