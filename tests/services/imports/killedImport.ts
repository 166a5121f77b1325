/*
 * A process that takes a list in and kills itself in the middle, once so many rows of it are written. Run by
 * importCrash.test.ts with the database, the minute it is, and the number of writes.
 */
import { migrationsDir } from '../../../main/hosts/build.ts'
import { beginCheck, beginTake, importStands } from '../../../main/services/imports/importing.ts'
import { openFile } from '../../../main/services/imports/opened.ts'
import { openStore, type Store } from '../../../main/store/store.ts'
import { customerList } from '../../bench/intake/lists.ts'
import { importingEnds } from './ends.ts'

const [file, nowAt, killAt] = process.argv.slice(2)
const real = await openStore(file!, { dir: migrationsDir })
let writes = 0
const store: Store = {
  ...real,
  transact: (stamp, work) =>
    real.transact(stamp, async (tx, audit) => {
      const counted = new Proxy(tx, {
        get(of, name) {
          const value = Reflect.get(of, name) as unknown
          if (name !== '$executeRaw') return value
          return (...rest: unknown[]) => {
            if (++writes === Number(killAt)) process.kill(process.pid, 'SIGKILL')
            return (value as (...rest: unknown[]) => unknown).apply(of, rest)
          }
        },
      })
      return work(counted, audit)
    }),
}
const desk = { store, now: () => Number(nowAt), who: 'front desk' }
const base64 = Buffer.from(customerList(4_000)).toString('base64')
const { fileId, reading } = await openFile(desk, { kind: 'customers', fileName: 'list.csv', base64 })
beginCheck(desk, { fileId, reading })
await importingEnds(desk)
beginTake(desk, { fileId, reading })
await importingEnds(desk)
console.log(importStands(desk).failed ?? writes)
await real.close()
