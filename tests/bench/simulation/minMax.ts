/**
 * The plain min-max rule: when stock and orders fall to the minimum, order whole packs up to the maximum. Tuned with
 * hindsight, on the very weeks it is judged by, to the least cost at which every product is served at least as well as
 * asked: no shop could set it better. A service moves in steps with the minimum, so a second form stops a tenth of a
 * pack short of it: the two enclose what min-max would cost at exactly the same service.
 */
import { type Result, type Rule, runShop } from './run.ts'
import type { SimProduct, World } from './shop.ts'

export interface MinMax {
  readonly minCenti: number
  readonly maxCenti: number
}

export function minMaxRule(products: readonly SimProduct[], levels: readonly MinMax[]): Rule {
  return {
    order: (_day, views) =>
      views.map((view, p) => {
        const stock = view.lots.reduce((sum, lot) => sum + lot.centi, 0)
        const position = stock + view.underWayCenti - view.waitingCenti
        const { minCenti, maxCenti } = levels[p]!
        return position > minCenti ? 0 : Math.ceil((maxCenti - position) / products[p]!.packCenti)
      }),
  }
}

const SPANS_IN_PACKS = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 24]
/** A tenth of a pack is finer than any owner sets a minimum. */
const STEPS_PER_PACK = 10
const MOST_STEPS = 200

/**
 * For each product and each span between minimum and maximum, the least minimum that serves (found alone: what one
 * product has on the shelf does not touch another's service); then the spans that together cost least, product by
 * product until nothing improves, because orders of one day share their carriage.
 */
export function tuneMinMax(
  world: World,
  services: readonly number[],
  serves: 'at-least' | 'just-short' = 'at-least',
): { levels: MinMax[]; result: Result } {
  const candidates = world.products.map((_, p) =>
    SPANS_IN_PACKS.map(packs => serving(world, p, packs, services[p]!, serves)).filter(
      levels => levels !== null,
    ),
  )
  const cost = (levels: readonly MinMax[]) => runShop(world, minMaxRule(world.products, levels)).costPerWeek
  let levels = candidates.map(list => list[Math.floor(list.length / 2)]!)
  let best = cost(levels)
  for (let improved = true; improved; ) {
    improved = false
    candidates.forEach((list, p) => {
      for (const candidate of list) {
        const tried = levels.map((entry, i) => (i === p ? candidate : entry))
        const got = cost(tried)
        if (got >= best - 1e-6) continue
        best = got
        levels = tried
        improved = true
      }
    })
  }
  return { levels, result: runShop(world, minMaxRule(world.products, levels)) }
}

function serving(
  world: World,
  p: number,
  spanPacks: number,
  service: number,
  how: 'at-least' | 'just-short',
): MinMax | null {
  const product = world.products[p]!
  const alone = { ...world, products: [product], draws: [world.draws[p]!] }
  const step = product.packCenti / STEPS_PER_PACK
  const at = (k: number) => ({ minCenti: k * step, maxCenti: k * step + spanPacks * product.packCenti })
  const serves = (k: number) => runShop(alone, minMaxRule([product], [at(k)])).service[0]! >= service
  let low = 0
  let high = MOST_STEPS
  if (!serves(high)) return null
  while (low < high) {
    const middle = (low + high) >> 1
    if (serves(middle)) high = middle
    else low = middle + 1
  }
  return at(how === 'at-least' ? low : Math.max(0, low - 1))
}
