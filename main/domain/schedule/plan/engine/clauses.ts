import type { Reason, Trail } from './trail.ts'

/** "At least one of these literals"; the first two are watched, and the first is the one it forces. */
export class Clause implements Reason {
  /** side, number, side, number, ... */
  readonly literals: number[]
  readonly learned: boolean
  /** How many levels its literals came from when it was learned: few is good. */
  spread = 0
  used = 0
  gone = false

  constructor(literals: number[], learned: boolean) {
    this.literals = literals
    this.learned = learned
  }

  explain(_side: number, _number: number, out: number[]): void {
    const { literals } = this
    for (let i = 2; i < literals.length; i += 2) out.push(literals[i]! ^ 1, 1 - literals[i + 1]!)
  }
}

/** Clauses by the side whose growth makes a watched literal false, with the number from which it does. */
interface Watches {
  clauses: Clause[]
  numbers: number[]
}

export class Clauses {
  private readonly watches: Watches[] = []
  learned: Clause[] = []

  private watch(clause: Clause, at: number): void {
    const side = clause.literals[at]! ^ 1
    let list = this.watches[side]
    if (!list) {
      list = { clauses: [], numbers: [] }
      this.watches[side] = list
    }
    list.clauses.push(clause)
    list.numbers.push(1 - clause.literals[at + 1]!)
  }

  /** Adds a clause of at least two literals; the caller sees to it that the first two are the ones to watch. */
  add(clause: Clause): void {
    this.watch(clause, 0)
    this.watch(clause, 2)
    if (clause.learned) this.learned.push(clause)
  }

  /** Wakes the clauses one of whose watched literals became false as `side` grew from `old` to `now`. */
  wake(trail: Trail, side: number, old: number, now: number): boolean {
    const list = this.watches[side]
    if (!list) return true
    const { clauses, numbers } = list
    const { low } = trail
    const length = clauses.length
    let kept = 0
    let i = 0
    for (; i < length; i++) {
      const number = numbers[i]!
      const clause = clauses[i]!
      if (number <= old || number > now) {
        clauses[kept] = clause
        numbers[kept++] = number
        continue
      }
      if (clause.gone) continue
      const { literals } = clause
      const own = side ^ 1
      if (literals[0] === own && literals[1] === 1 - number) {
        literals[0] = literals[2]!
        literals[1] = literals[3]!
        literals[2] = own
        literals[3] = 1 - number
      }
      const side0 = literals[0]!
      const number0 = literals[1]!
      if (low[side0]! < number0) {
        let found = false
        for (let j = 4; j < literals.length; j += 2) {
          if (low[literals[j]! ^ 1]! > -literals[j + 1]!) continue
          literals[2] = literals[j]!
          literals[3] = literals[j + 1]!
          literals[j] = own
          literals[j + 1] = 1 - number
          // A literal of the same side may watch this very list; it is appended and read again, which is harmless.
          this.watch(clause, 2)
          found = true
          break
        }
        if (found) continue
        clauses[kept] = clause
        numbers[kept++] = number
        if (!trail.set(side0, number0, clause)) {
          for (i++; i < clauses.length; i++) {
            clauses[kept] = clauses[i]!
            numbers[kept++] = numbers[i]!
          }
          clauses.length = kept
          numbers.length = kept
          return false
        }
        continue
      }
      clauses[kept] = clause
      numbers[kept++] = number
    }
    for (; i < clauses.length; i++) {
      clauses[kept] = clauses[i]!
      numbers[kept++] = numbers[i]!
    }
    clauses.length = kept
    numbers.length = kept
    return true
  }

  /** Forgets the worse half of what was learned, sparing the short and what holds a literal just now. */
  forget(trail: Trail): void {
    const held = new Set(trail.reasons)
    const order = [...this.learned].sort((a, b) => a.spread - b.spread || b.used - a.used)
    const keep = order.length >> 1
    this.learned = order.filter((clause, i) => {
      if (i < keep || clause.spread <= 2 || held.has(clause)) return true
      clause.gone = true
      return false
    })
  }
}
