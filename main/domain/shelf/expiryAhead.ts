/** What a line of expiring goods promises until the next delivery: the share of draws it serves, and what is left of it. */
import { addIndependent, addTo, type Chances, chanceOf, NOTHING } from './chances.ts'
import type { Demand } from './demand.ts'
import { cellsOf, type Line } from './expiryLine.ts'

/**
 * Follows the cells gone from the front of the line, used or expired, over the open days to cover: their number tells
 * what is left of every batch, because the front always goes first. A draw is judged on the last day before the next
 * delivery as `serviceAt` judges it: a booked one after all unforeseen use of that day, an unforeseen one after the use
 * before it. Exact for a line, but for that order within the day. Takes days × cells × cells of a day's use.
 */
export function expiryAhead(
  demand: Demand,
  cover: Chances,
): (line: Line) => { served: number; left: number } {
  return line => {
    const total = cellsOf(line)
    let gone: Chances = NOTHING
    let expiring = 0
    let [served, left] = [0, 0]
    cover.forEach((chance, k) => {
      const before = gone
      if (k > 0) {
        gone = addIndependent(gone, demand.surprise[k] ?? NOTHING, Number.POSITIVE_INFINITY)
        const used = gone
        expiring += k < line.length ? line[k - 1]! : 0
        gone = atLeast(gone, expiring)
        if (chance > 0) {
          const unforeseen = demand.unforeseenShare[k] ?? 0
          served += chance * (1 - unforeseen) * atMost(used, total)
          const size = demand.drawSize[k] ?? NOTHING
          for (let cells = 0; cells < size.length; cells++)
            served += chance * unforeseen * chanceOf(size, cells) * atMost(before, total - cells)
        }
      } else if (chance > 0) served += total >= 0 ? chance : 0
      if (chance > 0)
        gone.forEach((part, cells) => {
          left += chance * part * Math.max(0, total - cells)
        })
    })
    return { served, left }
  }
}

/** Whatever was used, so much has expired by then or been used before. */
function atLeast(gone: Chances, cells: number): Chances {
  if (cells <= 0) return gone
  const after = new Float64Array(Math.max(gone.length, cells + 1))
  gone.forEach((chance, k) => {
    addTo(after, Math.max(k, cells), chance)
  })
  return after
}

function atMost(gone: Chances, cells: number): number {
  let sum = 0
  for (let k = 0; k <= cells && k < gone.length; k++) sum += chanceOf(gone, k)
  return sum
}
