import type { Store, Tx } from '../../main/store/store.ts'

export interface DyingStore {
  store: Store
  /** Writes counted so far, a commit being the last of its transaction. */
  writes(): number
}

/** A store whose process kills itself before the n-th write inside its transactions, or dies as `die` says. */
export function dyingStore(
  real: Store,
  killAt: number,
  die: () => void = () => process.kill(process.pid, 'SIGKILL'),
): DyingStore {
  let writes = 0
  function dieInTime(): void {
    writes += 1
    if (writes === killAt) die()
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
  return {
    writes: () => writes,
    store: {
      ...real,
      transact: (stamp, work) =>
        real.transact(stamp, async (tx, audit) => {
          const result = await work(counted(tx as object) as Tx, audit)
          dieInTime()
          return result
        }),
    },
  }
}
