import { type Span, spanSet } from '../../calendar/spans.ts'
import { addLink } from './chain.ts'
import { Link } from './engine/links.ts'
import type { Solver } from './engine/solver.ts'
import { anyOf, not, yesOrNo } from './literals.ts'
import type { JobShop } from './types.ts'

/** "Job `b` comes so much after job `a`": past one stretch of forbidden differences, or before it. */
export interface Past {
  readonly a: number
  readonly b: number
  readonly gap: Span
  readonly literal: readonly [number, number]
}

/**
 * A job without waits is rigid: one start says it all. Two of them clash exactly where their starts differ by a number
 * of a known set, which is a few stretches, because the clashes on single machines overlap. One yes-or-no for each
 * stretch says on which side of it the pair lies. Returns them, for the guide.
 */
export function keepApart(
  solver: Solver,
  shop: JobShop,
  starts: readonly number[],
  points: Int32Array,
): Past[] {
  const pasts: Past[] = []
  const rows = new Map<number, Int32Array>()
  /** The points moved by `by`. */
  const moved = (by: number) => {
    const row = rows.get(by) ?? points.map(point => point + by)
    rows.set(by, row)
    return row
  }
  for (let b = 0; b < shop.length; b++)
    for (let a = 0; a < b; a++) {
      const gaps = forbidden(shop[a]!, shop[b]!)
      const own = gaps.map((gap): Past => {
        const literal = yesOrNo(solver)
        addLink(solver, new Link(starts[a]!, moved(gap.to), starts[b]!, points, literal))
        const before = not(literal) as readonly [number, number]
        addLink(solver, new Link(starts[b]!, moved(-gap.from), starts[a]!, points, before))
        return { a, b, gap, literal }
      })
      // Past a later stretch is past the one before.
      own.forEach(({ literal }, i) => {
        const before = own[i - 1]
        if (before) anyOf(solver, [not(literal), before.literal])
      })
      pasts.push(...own)
    }
  return pasts
}

/**
 * The differences (start of `b` less start of `a`) at which the two clash: what lies between `from` and `to` is
 * forbidden, the two themselves are free.
 */
function forbidden(a: JobShop[number], b: JobShop[number]): Span[] {
  const clashes: Span[] = []
  let beforeA = 0
  for (const [machineA, minutesA] of a) {
    let beforeB = 0
    for (const [machineB, minutesB] of b) {
      // They overlap there while -minutesB < difference + beforeB - beforeA < minutesA.
      const shift = beforeA - beforeB
      if (machineA === machineB) clashes.push({ from: shift - minutesB + 1, to: shift + minutesA })
      beforeB += minutesB
    }
    beforeA += minutesA
  }
  return spanSet(clashes).map(({ from, to }) => ({ from: from - 1, to }))
}
