/**
 * Whole variables with bounds, and the trail of how the bounds came to be. Each variable `x` has two sides: side `2x`
 * grows with its least value, side `2x + 1` with its greatest, negated. A literal is a side and a number, "side >=
 * number", so `x <= 4` reads "side 2x+1 >= -4": propagation, clauses and explanations know one direction only.
 */

/** Why a literal holds: appends literals (side, number, ...) that were true before it and force `side >= number`. */
export interface Reason {
  explain(side: number, number: number, out: number[]): void
}

/** Woken when a side it watches has grown; false where that is a contradiction. */
export interface Watcher {
  wake(trail: Trail): boolean
}

/** The side of "at least": `[atLeast(x), v]` says x >= v. */
export const atLeast = (x: number): number => 2 * x
/** The side of "at most": `[atMost(x), -v]` says x <= v. */
export const atMost = (x: number): number => 2 * x + 1

/** Literals fixed when they are written down. */
export class Because implements Reason {
  readonly literals: readonly number[]

  constructor(literals: readonly number[]) {
    this.literals = literals
  }

  explain(_side: number, _number: number, out: number[]): void {
    for (const part of this.literals) out.push(part)
  }
}

export class Trail {
  /** The bound of each side, and what it is before any search. */
  readonly low: number[] = []
  /** Trail entries: the side that grew, its bound before and after, the entry of the same side before it. */
  readonly sides: number[] = []
  readonly olds: number[] = []
  readonly news: number[] = []
  readonly befores: number[] = []
  readonly reasons: (Reason | undefined)[] = []
  /** The last entry of each side, -1 for none. */
  readonly last: number[] = []
  /** The length of the trail at the beginning of each level. */
  readonly levels: number[] = []
  /** The literals that cannot all hold, after a contradiction. */
  conflict: number[] = []
  /** Entries whose watchers have been woken. */
  done = 0

  /** A new variable with all values from `least` to `most`. */
  add(least: number, most: number): number {
    this.low.push(least, -most)
    this.last.push(-1, -1)
    return this.low.length / 2 - 1
  }

  least(x: number): number {
    return this.low[2 * x]!
  }

  most(x: number): number {
    return -this.low[2 * x + 1]!
  }

  fixed(x: number): boolean {
    return this.low[2 * x]! === -this.low[2 * x + 1]!
  }

  isTrue(side: number, number: number): boolean {
    return this.low[side]! >= number
  }

  isFalse(side: number, number: number): boolean {
    return this.low[side ^ 1]! > -number
  }

  /** Makes a literal hold; false, with the conflict written down, where its opposite does. */
  set(side: number, number: number, reason: Reason | undefined): boolean {
    const old = this.low[side]!
    if (old >= number) return true
    if (this.low[side ^ 1]! > -number) {
      this.conflict = [side ^ 1, 1 - number]
      reason?.explain(side, number, this.conflict)
      return false
    }
    this.sides.push(side)
    this.olds.push(old)
    this.news.push(number)
    this.befores.push(this.last[side]!)
    this.reasons.push(reason)
    this.last[side] = this.sides.length - 1
    this.low[side] = number
    return true
  }

  /** The trail entry that made a true literal true; -1 where it held from the start. */
  entryOf(side: number, number: number): number {
    let entry = this.last[side]!
    while (entry >= 0 && this.olds[entry]! >= number) entry = this.befores[entry]!
    return entry
  }

  /** The level of an entry. */
  levelOf(entry: number): number {
    const { levels } = this
    let from = 0
    let to = levels.length
    while (from < to) {
      const middle = (from + to) >> 1
      if (levels[middle]! <= entry) from = middle + 1
      else to = middle
    }
    return from
  }

  /** Takes everything back that came after the end of `level`. */
  backTo(level: number): void {
    const { levels, sides, last, low } = this
    if (level >= levels.length) return
    const length = levels[level]!
    for (let entry = sides.length - 1; entry >= length; entry--) {
      const side = sides[entry]!
      low[side] = this.olds[entry]!
      last[side] = this.befores[entry]!
    }
    sides.length = length
    this.olds.length = length
    this.news.length = length
    this.befores.length = length
    this.reasons.length = length
    levels.length = level
    this.done = length
  }
}
