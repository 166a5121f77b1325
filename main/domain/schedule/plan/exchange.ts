import type { FloorPlan } from './types.ts'

/** A car that goes from one bay into another at a minute (or grid point). */
export interface Transfer {
  readonly at: number
  readonly from: string
  readonly to: string
}

/**
 * Cars that go into each other's bays at one minute in a closed circle, so that none can be the first; undefined where
 * all of them can go one after the other.
 */
export function findCircle<T extends Transfer>(transfers: readonly T[]): T[] | undefined {
  const leaving = new Map(transfers.map(one => [`${one.at} ${one.from}`, one]))
  for (const start of transfers) {
    const path = new Set<T>()
    let one: T | undefined = start
    while (one && !path.has(one)) {
      path.add(one)
      one = leaving.get(`${one.at} ${one.to}`)
    }
    if (one === start) return [...path]
  }
  return undefined
}

/** All changes of bay in a plan. */
export function transfersOf(plan: FloorPlan): Transfer[] {
  return Object.values(plan).flatMap(({ steps }) =>
    steps.flatMap(({ bay, start }, i) => {
      const from = steps[i - 1]?.bay
      return from !== undefined && from !== bay ? [{ at: start, from, to: bay }] : []
    }),
  )
}
