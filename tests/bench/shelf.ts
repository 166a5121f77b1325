/** The shelf: how fast it looks ahead, and how well its orders do, played out over 20,000 weeks and against an optimum. */
import { holdingOf, projectStock } from '../../main/domain/shelf/index.ts'
import type { Figure } from './run.ts'
import { storeFigures } from './shelfStore.ts'
import { type CrowdedShelf, crowdedShelf, DAYS_AHEAD } from './simulation/crowdedShelf.ts'
import { type Expectation, lustrumRule } from './simulation/lustrumRule.ts'
import { tuneMinMax } from './simulation/minMax.ts'
import { type Result, runShop } from './simulation/run.ts'
import { HOLD_RATE_PER_DAY, makeWorld, PRODUCTS } from './simulation/shop.ts'
import { buildModel, leastCostAt, measure } from './simulation/smallOptimum.ts'
import { minMaxSmall, ownRule } from './simulation/smallRules.ts'
import type { SmallShop, SmallState } from './simulation/smallShelf.ts'
import { SMALL_SHOPS } from './simulation/smallShops.ts'

const goalMs = 200
const weeks = 20_000
const rounds = 15

type Row = [name: string, value: number, unit: string, goal?: string, met?: boolean]

function figure([name, value, unit, goal, met]: Row): Figure {
  const rounded = Math.round(value * 1000) / 1000
  return { bench: 'shelf', case: name, value: rounded, unit, goal: goal ?? null, met: met ?? null }
}

/** The middle of the times, in ms; the result is used, so that no round is optimised away. */
function median(work: () => number): number {
  let used = 0
  for (let round = 0; round < 3; round++) used += work()
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const start = performance.now()
    used += work()
    times.push(performance.now() - start)
  }
  if (!Number.isFinite(used)) throw new Error('a projection has no end')
  return times.sort((a, b) => a - b)[rounds >> 1]!
}

/** On hand by lot: the plain sum of the moves. */
function balancesOf(moves: CrowdedShelf['moves']): Map<string, number> {
  const balances = new Map<string, number>()
  for (const move of moves) balances.set(move.lotId, (balances.get(move.lotId) ?? 0) + move.centi)
  return balances
}

function project(shelf: CrowdedShelf, balances: ReadonlyMap<string, number>): number {
  let ends = 0
  shelf.lots.forEach((lots, p) => {
    const { likely, dry } = projectStock({
      today: shelf.today,
      days: DAYS_AHEAD,
      holdings: lots.map(lot => holdingOf(lot, balances.get(lot.id) ?? 0)),
      booked: shelf.booked[p]!,
      deliveries: shelf.deliveries[p]!,
      unforeseen: shelf.unforeseen[p]!,
      shopOpen: day => day % 7 !== 3,
    })
    ends += likely.at(-1)! + (dry?.day ?? 0)
  })
  return ends
}

function* looksAhead(): Generator<Row> {
  let before: number | undefined
  for (const [products, lots, moves] of [
    [20, 500, 50_000],
    [200, 5000, 500_000],
    [2000, 50_000, 500_000],
  ] as const) {
    const shelf = crowdedShelf(products, lots, moves)
    const balances = balancesOf(shelf.moves)
    const size = `${products} products, ${lots} lots, ${moves} moves`
    const time = median(() => project(shelf, balances))
    const asked = products === 200
    if (asked) yield [`${size}, projection`, time, 'ms', `under ${goalMs} ms`, time < goalMs]
    else yield [`${size}, projection`, time, 'ms']
    const whole = median(() => project(shelf, balancesOf(shelf.moves)))
    if (asked)
      yield [
        `${size}, projection with all moves summed first`,
        whole,
        'ms',
        `under ${goalMs} ms`,
        whole < goalMs,
      ]
    if (before !== undefined)
      yield [`ten times the products, to ${products}: growth of the projection`, time / before, 'ratio']
    before = time
  }
}

/** Learning, planning and advising 200 products: what the close of day does before it can say what to order. */
function* advises(): Generator<Row> {
  const world = makeWorld(PRODUCTS, 4, 500, 3)
  const start = performance.now()
  const runs = 40
  for (let run = 0; run < runs; run++) runShop({ ...world, days: 1 }, lustrumRule(world))
  const each = (performance.now() - start) / runs / PRODUCTS.length
  yield ['learning two years of draws and planning anew, from nothing, a product', each, 'ms']
}

function rowsOf(name: string, result: Result): Row[] {
  const hold = result.stockValueMinor.reduce((sum, value) => sum + value, 0) * HOLD_RATE_PER_DAY * 5
  return [
    ...PRODUCTS.map(
      (product, p): Row => [`${name}: stock of ${product.name}`, result.stockValueMinor[p]! / 100, 'value'],
    ),
    [`${name}: orders and carriage a week`, result.orderCostPerWeek / 100, 'value'],
    [`${name}: holding a week`, hold / 100, 'value'],
    [`${name}: expired a week`, result.wasteMinor.reduce((a, b) => a + b, 0) / 100, 'value'],
    [`${name}: all of it a week`, result.costPerWeek / 100, 'value'],
  ]
}

function* playsOut(): Generator<Row> {
  const world = makeWorld(PRODUCTS, weeks, 500, 7)
  const expected: Expectation = { plans: 0, service: PRODUCTS.map(() => 0) }
  const own = runShop(world, lustrumRule(world, expected))
  for (const [p, product] of PRODUCTS.entries()) {
    const miss = 100 * (own.service[p]! - product.service)
    const name = `${weeks} weeks, ${product.name}`
    yield [`${name}: asked for`, 100 * product.service, '%']
    yield [`${name}: predicted by its own plans`, (100 * expected.service[p]!) / expected.plans, '%']
    yield [
      `${name}: served of ${own.draws[p]} draws`,
      100 * own.service[p]!,
      '%',
      'within 2 points',
      Math.abs(miss) <= 2,
    ]
  }
  yield* rowsOf('the rule', own)
  for (const serves of ['at-least', 'just-short'] as const) {
    const name =
      serves === 'at-least' ? 'min-max tuned to serve as well' : 'min-max tuned to serve just short of that'
    const { result } = tuneMinMax(world, own.service, serves)
    for (const [p, product] of PRODUCTS.entries())
      yield [`${name}: served of ${product.name}`, 100 * result.service[p]!, '%']
    yield* rowsOf(name, result)
    const saved = 100 * (1 - own.costPerWeek / result.costPerWeek)
    if (serves === 'at-least') yield [`cheaper than ${name}`, saved, '%', 'at least 20 %', saved >= 20]
    else yield [`cheaper than ${name}`, saved, '%']
  }
}

function* againstOptimum(): Generator<Row> {
  for (const [name, shop] of Object.entries(SMALL_SHOPS)) {
    const model = buildModel(shop)
    for (const target of [0.9, 0.95, 0.98]) {
      const got = measure(model, ownRule(shop, target).rule)
      const gap = 100 * (got.costPerDay / leastCostAt(model, got.missedPerDay) - 1)
      const label = `small shop, goods ${name === 'keeps' ? 'that keep' : 'that expire'}, target ${target * 100} %`
      yield [`${label}: served`, 100 * got.service, '%']
      yield [`${label}: above the optimum at that service`, gap, '%', 'within 3 %', gap <= 3]
      if (shop.life > 0) continue
      const rival = cheapestMinMax(shop, got.service, rule => measure(model, rule))
      yield [
        `${label}: cheaper than the best min-max that serves as well`,
        100 * (1 - got.costPerDay / rival),
        '%',
      ]
    }
  }
}

function cheapestMinMax(
  shop: SmallShop,
  service: number,
  measured: (rule: (state: SmallState) => number) => { costPerDay: number; service: number },
): number {
  let best = Number.POSITIVE_INFINITY
  for (let min = 0; min < shop.most / 2; min++)
    for (let max = min + 1; max <= shop.most - shop.packCells; max++) {
      const got = measured(minMaxSmall(shop, min, max))
      if (got.service >= service) best = Math.min(best, got.costPerDay)
    }
  return best
}

/** Yields one figure after another; the last two groups play shops out and take minutes. */
export async function* run(): AsyncGenerator<Figure> {
  for (const rows of [looksAhead, advises, againstOptimum, playsOut])
    for (const row of rows()) yield figure(row)
  yield* storeFigures()
}
