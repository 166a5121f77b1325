import { Because, type Reason, type Trail, type Watcher } from './trail.ts'

/** Numbers that never fall. */
export type Rising = Int32Array

/** The first index from `from` at which `row` reaches at least `value`; its length for none. */
export function firstAtLeast(row: Rising, value: number, from = 0): number {
  let lo = from
  let hi = row.length
  while (lo < hi) {
    const middle = (lo + hi) >> 1
    if (row[middle]! >= value) hi = middle
    else lo = middle + 1
  }
  return lo
}

/**
 * "If `when` holds, then right[y] >= left[x]", both rising: a wait, the order of two cars in a bay, the longest wait
 * (turned round). `when` is a literal, or absent for always.
 */
export class Link implements Watcher {
  readonly x: number
  readonly left: Rising
  readonly y: number
  readonly right: Rising
  readonly when: readonly [number, number] | undefined
  private readonly later: Reason
  private readonly sooner: Reason

  constructor(x: number, left: Rising, y: number, right: Rising, when?: readonly [number, number]) {
    this.x = x
    this.left = left
    this.y = y
    this.right = right
    this.when = when
    this.later = {
      explain: (_side, number, out) => {
        if (when) out.push(when[0], when[1])
        out.push(2 * x, firstAtLeast(left, right[number - 1]! + 1))
      },
    }
    this.sooner = {
      explain: (_side, number, out) => {
        if (when) out.push(when[0], when[1])
        out.push(2 * y + 1, 1 - firstAtLeast(right, left[1 - number]!))
      },
    }
  }

  wake(trail: Trail): boolean {
    const { x, y, left, right, when } = this
    if (when) {
      if (trail.isFalse(when[0], when[1])) return true
      if (!trail.isTrue(when[0], when[1])) {
        const most = right[trail.most(y)]!
        if (left[trail.least(x)]! <= most) return true
        const from = firstAtLeast(left, most + 1)
        const until = firstAtLeast(right, left[from]!)
        return trail.set(when[0] ^ 1, 1 - when[1], new Because([2 * x, from, 2 * y + 1, 1 - until]))
      }
    }
    const need = left[trail.least(x)]!
    const low = trail.least(y)
    if (right[low]! < need && !trail.set(2 * y, firstAtLeast(right, need, low + 1), this.later)) return false
    const most = right[trail.most(y)]!
    const high = trail.most(x)
    if (left[high]! > most) return trail.set(2 * x + 1, 1 - firstAtLeast(left, most + 1), this.sooner)
    return true
  }
}
