import { Because, type Trail, type Watcher } from './trail.ts'

/** A cost that rises with a side: `row[bound - first]`. */
export interface Term {
  readonly side: number
  /** The bound the row begins with: the lowest the side ever has. */
  readonly first: number
  readonly row: Int32Array
}

/** "The sum of the terms is at most `total`", a variable. */
export class Sum implements Watcher {
  readonly terms: readonly Term[]
  readonly total: number

  constructor(terms: readonly Term[], total: number) {
    this.terms = terms
    this.total = total
  }

  private cost(trail: Trail, { side, first, row }: Term): number {
    return row[trail.low[side]! - first]!
  }

  wake(trail: Trail): boolean {
    const { terms, total } = this
    let sum = 0
    for (const term of terms) sum += this.cost(trail, term)
    if (sum > trail.least(total) && !trail.set(2 * total, sum, new Because(this.because(trail, 0))))
      return false
    const most = trail.most(total)
    const room = most - sum
    for (const term of terms) {
      const { side, first, row } = term
      const bound = trail.low[side]!
      const highest = -trail.low[side ^ 1]!
      const now = row[bound - first]!
      if (row[highest - first]! - now <= room) continue
      let lo = bound + 1
      let hi = highest
      while (lo < hi) {
        const middle = (lo + hi) >> 1
        if (row[middle - first]! - now > room) hi = middle
        else lo = middle + 1
      }
      const spare = row[lo - first]! - now - room - 1
      const why = this.because(trail, spare, term)
      why.push(2 * total + 1, -most)
      if (!trail.set(side ^ 1, 1 - lo, new Because(why))) return false
    }
    return true
  }

  /** The bounds that make the sum, weakened as far as `spare` goes, without one of the terms. */
  private because(trail: Trail, spare: number, without?: Term): number[] {
    const why: number[] = []
    let left = spare
    for (const term of this.terms) {
      if (term === without) continue
      const { side, first, row } = term
      const now = row[trail.low[side]! - first]!
      if (now - row[0]! <= left) {
        left -= now - row[0]!
        continue
      }
      let lo = 0
      let hi = trail.low[side]! - first
      while (lo < hi) {
        const middle = (lo + hi) >> 1
        if (row[middle]! >= now) hi = middle
        else lo = middle + 1
      }
      why.push(side, lo + first)
    }
    return why
  }
}
