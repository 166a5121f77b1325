import type { Rising } from './links.ts'
import { Because, type Trail, type Watcher } from './trail.ts'

/** One use of a room: from the point of its start variable to that of its end variable, if `when` holds. */
export interface Use {
  readonly start: number
  readonly starts: Rising
  readonly end: number
  readonly ends: Rising
  readonly when: readonly [number, number] | undefined
}

/** "At no time more than `places` uses at once": by the times at which uses are certain. */
export class Room implements Watcher {
  readonly uses: readonly Use[]
  readonly places: number

  constructor(uses: readonly Use[], places: number) {
    this.uses = uses
    this.places = places
  }

  wake(trail: Trail): boolean {
    const { uses, places } = this
    const certain: Use[] = []
    for (const use of uses)
      if (isTrue(trail, use) && latestStart(trail, use) < earliestEnd(trail, use)) certain.push(use)
    for (const use of certain) {
      // The certain uses change most at the latest start of one of them, so it is enough to look there.
      const at = latestStart(trail, use)
      const here = certain.filter(one => latestStart(trail, one) <= at && at < earliestEnd(trail, one))
      if (here.length < places) continue
      if (here.length > places) {
        trail.conflict = here.slice(0, places + 1).flatMap(one => covers(one, at))
        return false
      }
      let until = Number.POSITIVE_INFINITY
      for (const one of here) until = Math.min(until, earliestEnd(trail, one))
      for (const other of uses)
        if (!here.includes(other) && !this.keepOut(trail, other, here, at, until)) return false
    }
    return true
  }

  /** Keeps `other` out of the full stretch from `at` to `until`. */
  private keepOut(trail: Trail, other: Use, here: readonly Use[], at: number, until: number): boolean {
    const { when } = other
    if (when && trail.isFalse(when[0], when[1])) return true
    if (isTrue(trail, other)) {
      for (;;) {
        const end = earliestEnd(trail, other)
        if (end <= at || earliestStart(trail, other) >= until) break
        const t = Math.min(end, until) - 1
        const first = firstAfter(other.starts, t)
        if (first <= trail.least(other.start)) break
        const why = here.flatMap(one => covers(one, t))
        why.push(...present(other), 2 * other.end, firstAfter(other.ends, t))
        if (!trail.set(2 * other.start, first, new Because(why))) return false
        if (end <= until) break
      }
      if (latestStart(trail, other) < until && latestEnd(trail, other) > at) {
        const t = Math.max(latestStart(trail, other), at)
        const last = firstAfter(other.ends, t) - 1
        if (last >= trail.most(other.end)) return true
        const why = here.flatMap(one => covers(one, t))
        why.push(...present(other), 2 * other.start + 1, 1 - firstAfter(other.starts, t))
        return trail.set(2 * other.end + 1, -last, new Because(why))
      }
      return true
    }
    const t = Math.max(latestStart(trail, other), at)
    if (t >= until || t >= earliestEnd(trail, other)) return true
    const why = here.flatMap(one => covers(one, t))
    why.push(2 * other.start + 1, 1 - firstAfter(other.starts, t), 2 * other.end, firstAfter(other.ends, t))
    return trail.set(when![0] ^ 1, 1 - when![1], new Because(why))
  }
}

function firstAfter(row: Rising, t: number): number {
  let lo = 0
  let hi = row.length
  while (lo < hi) {
    const middle = (lo + hi) >> 1
    if (row[middle]! > t) hi = middle
    else lo = middle + 1
  }
  return lo
}

const isTrue = (trail: Trail, { when }: Use) => !when || trail.isTrue(when[0], when[1])
const earliestStart = (trail: Trail, { start, starts }: Use) => starts[trail.least(start)]!
const latestStart = (trail: Trail, { start, starts }: Use) => starts[trail.most(start)]!
const earliestEnd = (trail: Trail, { end, ends }: Use) => ends[trail.least(end)]!
const latestEnd = (trail: Trail, { end, ends }: Use) => ends[trail.most(end)]!
const present = ({ when }: Use): readonly number[] => when ?? []

/** The literals that say a use covers the point `t`. */
function covers(use: Use, t: number): number[] {
  return [
    ...present(use),
    2 * use.start + 1,
    1 - firstAfter(use.starts, t),
    2 * use.end,
    firstAfter(use.ends, t),
  ]
}
