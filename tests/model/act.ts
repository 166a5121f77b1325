import fc from 'fast-check'
import type { Desk } from '../../main/services/desk/desk.ts'
import type { TestShop } from '../services/testShop.ts'
import type { Model, Planned } from './shopModel.ts'

/** The rows' ids in the database, in the order of the model's lists. */
export interface Ids {
  customers: string[]
  cars: string[]
  jobs: string[]
  bottles: string[]
  shop: Pick<TestShop, 'treatments'> & { coating: string; size: string }
}

/** Something somebody does, of which the model knows what should come. */
export interface Act {
  words: string
  /** What should come of it now, done by somebody who has `seen` the shop so. Null: there is nothing to do it to. */
  plan(model: Model, seen: Model): Planned | null
  really(desk: Desk, ids: Ids, seen: Model): Promise<unknown>
}

/** Which row of its list (taken round), and how many saves ago the person looked at it. */
export interface Which {
  index: number
  behind: number
}

export const which = fc.record({
  index: fc.nat(9),
  behind: fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.constant(1) }),
})

interface Aimed<T> {
  words: string
  list: (model: Model) => readonly T[]
  id: (ids: Ids) => readonly string[]
  plan: (model: Model, row: T, place: { index: number; stale: boolean }) => Planned
  really: (desk: Desk, seen: { id: string; version: number }) => Promise<unknown>
}

/** An act on one row, which is refused as stale where the row was saved since the person looked. */
export function onRow<T extends { version: number }>({ index, behind }: Which, aimed: Aimed<T>): Act {
  const look = (seen: Model) => {
    const rows = aimed.list(seen)
    const at = index % rows.length
    return { at, version: rows[at]!.version - behind }
  }
  return {
    words: `${aimed.words} ${index}${behind > 0 ? ', seen before a change' : ''}`,
    plan(model, seen) {
      if (aimed.list(seen).length === 0) return null
      const { at, version } = look(seen)
      const row = aimed.list(model)[at]!
      return aimed.plan(model, row, { index: at, stale: version !== row.version })
    },
    really(desk, ids, seen) {
      const { at, version } = look(seen)
      return aimed.really(desk, { id: aimed.id(ids)[at]!, version })
    },
  }
}
