import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Demand } from '../../../main/domain/shelf/demand.ts'
import { expiryAhead } from '../../../main/domain/shelf/expiryAhead.ts'

const chances = (least: number) =>
  fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 2, maxLength: 3 }).map(weights => {
    const from = Array.from({ length: least }, () => 0).concat(weights)
    const sum = weights.reduce((a, b) => a + b, 0)
    return Float64Array.from(from, weight => weight / sum)
  })

/** Every way three days can go, batch by batch. */
function byHand(
  line: number[],
  uses: Float64Array[],
  each: (before: number[], after: number[], chance: number) => void,
) {
  const walk = (left: number[], day: number, chance: number, before: number[]): void => {
    if (day === uses.length) {
      each(before, left, chance)
      return
    }
    uses[day]!.forEach((part, use) => {
      const next = [...left]
      let open = use
      for (let k = day; k < next.length - 1 && open > 0; k++) {
        const taken = Math.min(next[k]!, open)
        next[k]! -= taken
        open -= taken
      }
      next[next.length - 1]! += open
      // What is good until this day is thrown away at its end.
      if (day < next.length - 1 && day < uses.length - 1) next[day] = 0
      walk(next, day + 1, chance * part, left)
    })
  }
  walk(line, 0, 1, line)
}

const there = (line: number[]) => line.slice(0, -1).reduce((a, b) => a + b, 0) - line.at(-1)!

test('is what comes of playing out every way the days can go, batch by batch', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 4, maxLength: 4 }),
      fc.integer({ min: 0, max: 2 }),
      fc.array(chances(0), { minLength: 3, maxLength: 3 }),
      chances(1),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (stock, owed, uses, size, unforeseen) => {
        // Nobody is owed anything while there is something.
        const line = stock.some(cells => cells > 0) ? [...stock, 0] : [...stock, owed]
        const demand = {
          surprise: [Float64Array.of(1), ...uses],
          unforeseenShare: [0, 0, 0, unforeseen],
          drawSize: [size, size, size, size],
        } as object as Demand
        const got = expiryAhead(demand, Float64Array.of(0, 0, 0, 1))(line)
        let [served, left] = [0, 0]
        byHand(line, uses, (before, after, chance) => {
          if (there(after) >= 0) served += chance * (1 - unforeseen)
          size.forEach((part, cells) => {
            if (there(before) >= cells) served += chance * part * unforeseen
          })
          // The last day's own batch goes at its end.
          const kept = [...after]
          kept[2] = 0
          left += chance * Math.max(0, there(kept))
        })
        expect(got.served).toBeCloseTo(served, 9)
        expect(got.left).toBeCloseTo(left, 9)
      },
    ),
  )
})
