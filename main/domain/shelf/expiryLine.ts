/**
 * Goods that expire as a line of whole lattice cells: what is used first stands first. Draws booked until the next
 * delivery are set aside from it, as in the stock position, so the line is what is left for use nobody has booked yet.
 */
import type { BookedUse, DatedStock } from './position.ts'

/** `line[k]`: cells that can be used on the next k + 1 open days and not after. After them, last, the cells owed. */
export type Line = readonly number[]

export interface LineInput {
  readonly stock: readonly DatedStock[]
  readonly underWayCenti: number
  readonly waitingCenti: number
  readonly booked: readonly BookedUse[]
  /** Booked draws are set aside this many open days ahead. */
  readonly coverDays: number
  readonly stepCenti: number
  /** Open days that goods ordered now can still be used, the days of their delivery counted. */
  readonly ages: number
}

/** The line of a shelf. Goods under way last as long as goods ordered now; amounts are rounded to cells, their sum too. */
export function lineOf(input: LineInput): Line {
  const { ages, stepCenti } = input
  const centi = new Array<number>(ages).fill(0)
  for (const lot of input.stock) {
    const days = Math.min(lot.openDays ?? ages, ages)
    if (days >= 1) centi[days - 1]! += lot.centi
  }
  centi[ages - 1]! += input.underWayCenti
  let [upTo, cells] = [0, 0]
  const line = centi.map(each => {
    upTo += each
    const own = Math.round(upTo / stepCenti) - cells
    cells += own
    return own
  })
  line.push(0)
  takeFirst(line, Math.round(input.waitingCenti / stepCenti))
  const soon = input.booked.filter(use => use.inDays <= input.coverDays)
  for (const use of soon.sort((a, b) => a.inDays - b.inDays))
    takeFirst(line, Math.round(use.centi / stepCenti), use.inDays - 1)
  return line
}

/** Takes cells that can be used on a day (0: the next) from the front, in place; what lacks is owed. */
export function takeFirst(line: number[], cells: number, day = 0): void {
  const ages = line.length - 1
  let open = cells
  for (let k = Math.max(0, day); k < ages && open > 0; k++) {
    const used = Math.min(line[k]!, open)
    line[k]! -= used
    open -= used
  }
  line[ages]! += open
}

/** The line with so many cells ordered now: they serve what is owed first. */
export function withOrder(line: Line, cells: number): number[] {
  const ages = line.length - 1
  const owed = Math.min(line[ages]!, cells)
  const after = [...line]
  after[ages]! -= owed
  after[ages - 1]! += cells - owed
  return after
}

/** The close of the next day after so much use, with the cells that expired unused. No more than `mostOwed` is told apart. */
export function dayLater(line: Line, use: number, mostOwed: number): { line: number[]; expired: number } {
  const ages = line.length - 1
  const left = [...line]
  takeFirst(left, use)
  const owed = Math.min(left[ages]!, mostOwed)
  return { line: [...left.slice(1, ages), 0, owed], expired: left[0]! }
}

/** Cells on the line less those owed. */
export function cellsOf(line: Line): number {
  return line.reduce((sum, cells, k) => (k === line.length - 1 ? sum - cells : sum + cells), 0)
}
