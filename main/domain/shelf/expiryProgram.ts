/**
 * What to order of goods that soon expire, day by day. An order point knows how much is there, not how old it is, and one
 * size of order suits neither a full shelf of old goods nor an empty one. Where a product is small enough, every line of
 * batches it can have (`expiryLine`) is looked at, with every size of order: a Markov decision program over lines, solved
 * by value iteration for the least cost a day where each draw not served costs a price, and that price is the lowest with
 * which the service asked for is reached (Lagrange; Puterman 1994, from memory).
 *
 * With s lines, q sizes of order and u amounts of use a day, a round takes s·q·u steps: at most `MOST_STEPS`, and
 * `MOST_ROUNDS` of them for each price tried. Days and cells are bounded by `MOST_AGES` and `MOST_CELLS`. A product beyond
 * these has no program, and the order point stands.
 */
import { chanceOf } from './chances.ts'
import { expiryAhead } from './expiryAhead.ts'
import { cellsOf, dayLater, type Line, withOrder } from './expiryLine.ts'
import { lowestPrice, packPriceMinor } from './orderCosts.ts'
import type { PolicyInput } from './policyInput.ts'

const MOST_STEPS = 300_000
const MOST_AGES = 14
const MOST_CELLS = 12
const MOST_ROUNDS = 200
const MOST_LONG_RUN = 1_000
/** Steps of halving towards the price of a draw not served, after it was doubled until the service is reached. */
const DOUBLINGS = 14
const HALVINGS = 6

/** The ways a line can be answered: each with its cost a day and where the use of a day leads. */
export interface ExpiryModel {
  readonly lines: readonly Line[]
  /** `options[i]`: what can be ordered at line i, none first. */
  readonly options: readonly (readonly Option[])[]
  /** Chance of each amount of use; `to` of an option goes along with it. */
  readonly uses: readonly { readonly cells: number; readonly chance: number }[]
}

interface Option {
  readonly packs: number
  /** Holding, expiry, handling and price; minor units. */
  readonly cost: number
  /** Carriage of an order of one's own, which a joined one does not pay. */
  readonly carriage: number
  /** Share of draws not served. */
  readonly missed: number
  readonly to: readonly number[]
}

/** What to order at each line, by its key; a line that is not there is answered by the order point. */
export interface LinePlan {
  readonly ages: number
  readonly packs: Readonly<Record<string, number>>
  /** The same where an order goes to the supplier anyway. */
  readonly joinPacks: Readonly<Record<string, number>>
  readonly service: number
}

export function lineKey(line: Line): string {
  return line.join()
}

/** Open days that goods ordered now can be used, those of their delivery counted. Null where the goods keep. */
export function agesOf({ lifeDays, cover }: Pick<PolicyInput, 'lifeDays' | 'cover'>): number | null {
  if (lifeDays === null) return null
  const next = cover.reduce((sum, chance, k) => sum + chance * k, 0)
  return lifeDays + Math.max(0, Math.round(next) - 1)
}

/** The program of a product, no line holding more than `mostCells`; null where the goods keep or it would be too large. */
export function expiryModel(input: PolicyInput, mostCells: number): ExpiryModel | null {
  const ages = agesOf(input)
  const { demand, cover, breaks, orderCost, packCenti, holdRatePerDay } = input
  const packCells = Math.max(1, Math.round(packCenti / demand.stepCenti))
  if (ages === null || ages > MOST_AGES || mostCells > MOST_CELLS || mostCells < packCells) return null
  const uses = [...demand.day.entries()]
    .map(([cells, chance]) => ({ cells, chance }))
    .filter(use => use.chance > 0)
  const mostUsed = Math.max(...uses.map(use => use.cells))
  if (mostUsed > mostCells) return null
  const mostOwed = Math.min(2 * mostUsed, mostCells)
  const ahead = expiryAhead(demand, cover)
  const cellPrice = lowestPrice(input) * demand.stepCenti
  const index = new Map<string, number>()
  const lines: Line[] = []
  const find = (line: Line) => {
    const key = lineKey(line)
    const known = index.get(key)
    if (known !== undefined) return known
    index.set(key, lines.length)
    return lines.push(line) - 1
  }
  find(new Array<number>(ages + 1).fill(0))
  const options: Option[][] = []
  let steps = 0
  for (let i = 0; i < lines.length; i++) {
    if (steps > MOST_STEPS) return null
    const line = lines[i]!
    const room = Math.max(0, Math.floor((mostCells - cellsOf(line)) / packCells))
    options.push(Array.from({ length: room + 1 }, (_, packs) => answer(line, packs)))
    steps += (room + 1) * uses.length
  }
  return { lines, options, uses }

  function answer(line: Line, packs: number): Option {
    const after = withOrder(line, packs * packCells)
    const { served, left } = ahead(after)
    let expired = 0
    const to = uses.map(({ cells, chance }) => {
      const next = dayLater(after, cells, mostOwed)
      expired += chance * next.expired
      return find(next.line)
    })
    const goods = packs * packPriceMinor(breaks, packs)
    const free = orderCost.freeFromMinor !== null && goods >= orderCost.freeFromMinor
    return {
      packs,
      cost:
        left * cellPrice * holdRatePerDay +
        expired * cellPrice +
        (packs > 0 ? orderCost.lineMinor + goods - packs * packCells * cellPrice : 0),
      carriage: packs > 0 && !free ? orderCost.carriageMinor : 0,
      missed: 1 - served,
      to,
    }
  }
}

/** Which option to take at each line, by an order of one's own and by one that goes out anyway. */
export interface Answers {
  readonly own: Int32Array
  readonly joined: Int32Array
  readonly costPerDay: number
  readonly value: Float64Array
}

/**
 * The least cost a day where each draw not served of a day's costs `missPrice`. Settles to within a thousandth of that
 * cost, or stops after `MOST_ROUNDS`; `start` goes on from the value of a price near by.
 */
export function answersAt(
  { options, uses }: ExpiryModel,
  joinChance: number,
  missPrice: number,
  start?: Float64Array,
): Answers {
  const count = options.length
  let value = start ?? new Float64Array(count)
  const [own, joined] = [new Int32Array(count), new Int32Array(count)]
  for (let round = 1; ; round++) {
    const next = new Float64Array(count)
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let i = 0; i < count; i++) {
      let [bestOwn, bestJoined] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
      options[i]!.forEach((option, n) => {
        let sum = option.cost + missPrice * option.missed
        for (let u = 0; u < uses.length; u++) sum += uses[u]!.chance * value[option.to[u]!]!
        if (sum + option.carriage < bestOwn - 1e-9) {
          bestOwn = sum + option.carriage
          own[i] = n
        }
        if (sum < bestJoined - 1e-9) {
          bestJoined = sum
          joined[i] = n
        }
      })
      const best = (1 - joinChance) * bestOwn + joinChance * bestJoined
      // Half a step back to the old value keeps a plan with a rhythm from swinging for ever.
      next[i] = 0.5 * best + 0.5 * value[i]!
      const change = next[i]! - value[i]!
      least = Math.min(least, change)
      most = Math.max(most, change)
    }
    const base = next[0]!
    value = next.map(each => each - base)
    if (most - least <= 1e-3 * Math.abs(least + most) || round === MOST_ROUNDS)
      return { own, joined, costPerDay: least + most, value }
  }
}

/** Share of days that each line is met on in the long run, and the share of draws served. */
export function longRunOf(
  { options, uses }: ExpiryModel,
  { own, joined }: Pick<Answers, 'own' | 'joined'>,
  joinChance: number,
): { share: Float64Array; service: number } {
  let share = new Float64Array(options.length)
  share[0] = 1
  for (let round = 0; round < MOST_LONG_RUN; round++) {
    const next = new Float64Array(share.length)
    let change = 0
    for (let i = 0; i < share.length; i++) {
      if (share[i] === 0) continue
      for (const [taken, weight] of answersTo(i)) {
        const part = 0.9 * share[i]! * weight
        taken.to.forEach((to, u) => {
          next[to]! += part * uses[u]!.chance
        })
      }
      // A tenth stays, so that a plan with a rhythm settles too.
      next[i]! += 0.1 * share[i]!
    }
    for (let i = 0; i < share.length; i++) change += Math.abs(next[i]! - share[i]!)
    share = next
    if (change < 1e-7) break
  }
  let missed = 0
  for (let i = 0; i < share.length; i++)
    for (const [taken, weight] of answersTo(i)) missed += share[i]! * weight * taken.missed
  return { share, service: 1 - missed }

  function answersTo(i: number): [Option, number][] {
    const of = options[i]!
    return joinChance === 0
      ? [[of[own[i]!]!, 1]]
      : [
          [of[own[i]!]!, 1 - joinChance],
          [of[joined[i]!]!, joinChance],
        ]
  }
}

/**
 * The cheapest plan by lines that serves as asked; null where there is no program, or none of its plans serves so well.
 * Only the lines met in the long run are kept.
 */
export function linePlan(input: PolicyInput, mostCells: number): LinePlan | null {
  const model = expiryModel(input, mostCells)
  const ages = agesOf(input)
  if (!model || ages === null) return null
  let value: Float64Array | undefined
  const at = (missPrice: number) => {
    const answers = answersAt(model, input.joinChance, missPrice, value)
    value = answers.value
    return { answers, ...longRunOf(model, answers, input.joinChance) }
  }
  let [low, high] = [0, lowestPrice(input) * input.packCenti]
  let best = at(high)
  for (let n = 0; best.service < input.service; n++) {
    if (n === DOUBLINGS) return null
    ;[low, high] = [high, high * 2]
    best = at(high)
  }
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2
    const now = at(middle)
    if (now.service < input.service) low = middle
    else {
      best = now
      high = middle
    }
  }
  const met = model.lines.flatMap((line, i) =>
    chanceOf(best.share, i) > 1e-9 ? [[lineKey(line), i] as const] : [],
  )
  const table = (taken: Int32Array) =>
    Object.fromEntries(met.map(([key, i]) => [key, model.options[i]![taken[i]!]!.packs]))
  return {
    ages,
    packs: table(best.answers.own),
    joinPacks: input.joinChance > 0 ? table(best.answers.joined) : {},
    service: best.service,
  }
}
