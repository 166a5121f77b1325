/**
 * One product in a shop small enough to solve exactly. Every open day, in this order: what was ordered arrives (in the
 * evening, late with a known chance), booked and walk-in draws are made, what is past its life is thrown away, an order
 * may be placed. Draws that find too little take what is there and wait for the rest. Amounts are whole cells.
 */
export interface SmallShop {
  /** `walkIn[k]`: chance that k cells are drawn without notice on a day. */
  readonly walkIn: readonly number[]
  /** `booked[k]`: chance that a day has a booked draw of k cells. */
  readonly booked: readonly number[]
  /** A booked draw is known this many days ahead. */
  readonly notice: number
  /** Chance that an order arrives on the second day, not the first. */
  readonly late: number
  /** Days on which delivered goods can be used; 0: they keep for ever. */
  readonly life: number
  readonly packCells: number
  readonly orderCost: number
  /** Of one cell. */
  readonly holdCostPerDay: number
  /** Of one pack. */
  readonly price: number
  /** Stock and orders together never pass this: it bounds the state, and is set where no good plan goes. */
  readonly most: number
  /** Cells waited for beyond this are not told apart. */
  readonly mostWaiting: number
}

/** The close of a day, before ordering. */
export interface SmallState {
  /** On hand by days left, fewest first; one entry where goods keep. */
  readonly stock: readonly number[]
  readonly waiting: number
  /** Ordered yesterday and not here yet: it comes tomorrow. */
  readonly lateOrder: number
  /** Booked cells of the next days. */
  readonly bookings: readonly number[]
}

export interface Outcome {
  readonly chance: number
  readonly next: SmallState
  readonly holdCost: number
  readonly waste: number
  readonly draws: number
  readonly missed: number
}

export const keyOf = (state: SmallState): string =>
  `${state.stock.join(',')}|${state.waiting}|${state.lateOrder}|${state.bookings.join(',')}`

export const emptyShelf = (shop: SmallShop): SmallState => ({
  stock: new Array<number>(Math.max(1, shop.life)).fill(0),
  waiting: 0,
  lateOrder: 0,
  bookings: new Array<number>(shop.notice).fill(0),
})

export const onHandOf = (state: SmallState): number => state.stock.reduce((sum, cells) => sum + cells, 0)

/** Stock and orders less waiting jobs. */
export const positionOf = (state: SmallState): number => onHandOf(state) + state.lateOrder - state.waiting

/** All ways the next day can go after ordering `packs`. */
export function outcomes(shop: SmallShop, state: SmallState, packs: number): Outcome[] {
  const order = packs * shop.packCells
  const ways: Outcome[] = []
  const lateness =
    order === 0 ? [[1, false] as const] : [[1 - shop.late, false] as const, [shop.late, true] as const]
  shop.walkIn.forEach((walkChance, walkIn) => {
    const day = oneDay(shop, state, state.bookings[0] ?? 0, walkIn)
    for (const [lateChance, late] of lateness) {
      const arriving = state.lateOrder + (late ? 0 : order)
      const evening = received(shop, day, arriving)
      shop.booked.forEach((bookedChance, booked) => {
        const chance = walkChance * lateChance * bookedChance
        if (chance === 0) return
        const bookings = [...state.bookings.slice(1), booked]
        ways.push({
          chance,
          next: { ...evening, lateOrder: late ? order : 0, bookings: shop.notice === 0 ? [] : bookings },
          holdCost: shop.holdCostPerDay * onHandOf({ ...evening, lateOrder: 0, bookings: [] }),
          waste: day.waste,
          draws: day.draws,
          missed: day.missed,
        })
      })
    }
  })
  return ways
}

function oneDay(shop: SmallShop, state: SmallState, booked: number, walkIn: number) {
  const stock = [...state.stock]
  let waiting = state.waiting
  let draws = 0
  let missed = 0
  for (const amount of [booked, walkIn]) {
    if (amount === 0) continue
    draws++
    let open = amount
    for (let i = 0; i < stock.length && open > 0; i++) {
      const used = Math.min(stock[i]!, open)
      stock[i]! -= used
      open -= used
    }
    if (open > 0) missed++
    waiting = Math.min(shop.mostWaiting, waiting + open)
  }
  const waste = shop.life === 0 ? 0 : stock[0]!
  return { stock: shop.life === 0 ? stock : [...stock.slice(1), 0], waiting, draws, missed, waste }
}

function received(shop: SmallShop, day: { stock: number[]; waiting: number }, arriving: number) {
  const served = Math.min(day.waiting, arriving)
  const stock = [...day.stock]
  stock[Math.max(0, shop.life - 1)]! += arriving - served
  return { stock, waiting: day.waiting - served }
}
