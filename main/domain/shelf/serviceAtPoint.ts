/** What a stock position promises until the next delivery: the share of draws it serves, and what is left of it. */
import { addIndependent, type Chances, chanceOf, cumulative, mixture, NOTHING } from './chances.ts'
import type { Demand } from './demand.ts'

/**
 * The share of draws of the last day before the next delivery that find their whole amount, when the position stands at
 * so many cells now: booked ones compete with all unforeseen use until that day's end, an unforeseen one with the use
 * before that day and its own size. Each is taken to come last within the day, which errs on the safe side.
 */
export function serviceAt(demand: Demand, cover: Chances): (cells: number) => number {
  const needs: Chances[] = []
  const weights: number[] = []
  const weigh = (need: Chances, weight: number) => {
    needs.push(need)
    weights.push(weight)
  }
  cover.forEach((chance, k) => {
    if (chance === 0) return
    const unforeseen = demand.unforeseenShare[k] ?? 0
    const before = demand.ahead[Math.max(0, k - 1)] ?? NOTHING
    weigh(demand.ahead[k] ?? NOTHING, chance * (1 - unforeseen))
    weigh(addIndependent(before, demand.drawSize[k] ?? NOTHING, demand.cap), chance * unforeseen)
  })
  const within = cumulative(mixture(needs, weights))
  return cells => (cells < 0 ? 0 : chanceOf(within, Math.min(cells, within.length - 1)))
}

/** Expected cells left of so many after the unforeseen use. */
export function leftAt(unforeseen: Chances): (cells: number) => number {
  let expected = 0
  let atMost = 0
  const left = unforeseen.map((_, cells) => {
    if (cells > 0) atMost += chanceOf(unforeseen, cells - 1)
    expected += atMost
    return expected
  })
  const last = left.length - 1
  return cells => (cells <= 0 ? 0 : chanceOf(left, Math.min(cells, last)) + Math.max(0, cells - last))
}

/** What is expected to be used unbooked until the next delivery, in centi. */
export function expectedUnforeseen(demand: Demand, cover: Chances): number {
  return cover.reduce((sum, chance, k) => sum + chance * (demand.aheadMeanCenti[k] ?? 0), 0)
}
