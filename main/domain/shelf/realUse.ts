/**
 * What is really used, against the recipe: by product and vehicle size, and by the hands that use it. Medians and median
 * deviations, because half the readings of a cell may be wrong before they move: one spilt bottle among ten must not
 * change the recipe, and with a handful of readings nobody can weed by hand. A slope fit such as Theil and Sen's would be
 * robust too, but there is no trend to fit here: a cell is one amount, drawn again and again.
 */

import { say } from '../language/index.ts'
import { farOut, median, robustSpread } from '../measure/index.ts'
import type { SizeClass } from '../vehicle/index.ts'
import type { Unit } from './amount.ts'
import { amountWords } from './amountWords.ts'
import type { RecipeAmount } from './recipe.ts'

export interface UseReading {
  readonly productId: string
  readonly sizeClass: SizeClass
  readonly technicianId: string
  /** The recipe when it was drawn. */
  readonly recipeCenti: number
  readonly actualCenti: number
  readonly at: number
}

export interface RealUse {
  readonly productId: string
  readonly sizeClass: SizeClass
  readonly readings: number
  readonly typicalCenti: number
  readonly spreadCenti: number
  /** The latest recipe it was drawn by. */
  readonly recipeCenti: number
  /** Times of readings so far out that somebody should look at them. */
  readonly farOutAt: readonly number[]
  /** Set where real use differs from the recipe by more than chance: what "use this as the recipe" would set. */
  readonly suggestion: RecipeAmount | null
}

export interface Hand {
  readonly technicianId: string
  readonly productId: string
  readonly readings: number
  /** Use compared with what everybody uses for the same size: 1.2 is a fifth more. */
  readonly ratio: number
  /** Whether that is more than chance. */
  readonly real: boolean
}

// Recent habits count: a cell looks at its latest readings only.
const LATEST = 40
const LEAST_READINGS = 6
// A twentieth more or less is within what a syringe or a glance at the bottle can tell.
const LEAST_DIFFERENCE = 0.05
// The standard error of a median of normal readings is 1.2533 sd / √n; two of them leave a chance of about one in twenty.
const ERRORS = 2 * 1.2533

/** Real use of every product and vehicle size there are readings for. */
export function realUse(readings: readonly UseReading[]): RealUse[] {
  return [...cells(readings).values()].flatMap(latest => {
    const last = latest.at(-1)
    if (!last) return []
    const { productId, sizeClass, recipeCenti } = last
    const amounts = latest.map(reading => reading.actualCenti)
    const typicalCenti = Math.round(median(amounts))
    const spreadCenti = Math.round(robustSpread(amounts))
    const far = farOut(amounts)
    const off = Math.abs(typicalCenti - recipeCenti)
    const error = (ERRORS * spreadCenti) / Math.sqrt(amounts.length)
    const differs = amounts.length >= LEAST_READINGS && off > error && off > LEAST_DIFFERENCE * recipeCenti
    return {
      productId,
      sizeClass,
      readings: amounts.length,
      typicalCenti,
      spreadCenti,
      recipeCenti,
      farOutAt: latest.filter((_, i) => far[i]).map(reading => reading.at),
      suggestion: differs ? { centi: typicalCenti, sdCenti: Math.min(spreadCenti, typicalCenti) } : null,
    }
  })
}

/** How each technician's use compares with everybody's for the same product and vehicle size. */
export function handsOf(readings: readonly UseReading[]): Hand[] {
  const ratios = new Map<string, { technicianId: string; productId: string; ratios: number[] }>()
  for (const [, latest] of cells(readings)) {
    const typical = median(latest.map(reading => reading.actualCenti))
    if (!(typical > 0)) continue
    for (const { technicianId, productId, actualCenti } of latest) {
      const key = `${technicianId}\n${productId}`
      const hand = ratios.get(key) ?? { technicianId, productId, ratios: [] }
      hand.ratios.push(actualCenti / typical)
      ratios.set(key, hand)
    }
  }
  return [...ratios.values()].map(({ technicianId, productId, ratios: list }) => {
    const ratio = median(list)
    const error = (ERRORS * robustSpread(list)) / Math.sqrt(list.length)
    const off = Math.abs(ratio - 1)
    const real = list.length >= LEAST_READINGS && off > error && off > LEAST_DIFFERENCE
    return { technicianId, productId, readings: list.length, ratio, real }
  })
}

/** One sentence on a cell. */
export function realUseText(use: RealUse, unit: Unit): string {
  const typical = amountWords(use.typicalCenti, unit, 1)
  const recipe = amountWords(use.recipeCenti, unit, 1)
  const far =
    use.farOutAt.length === 0
      ? ''
      : ` ${say('{farOutAt} far-out readings were set aside.', { farOutAt: use.farOutAt.length })}`
  if (use.suggestion !== null)
    return say('The last {readings} draws took {typical} in the middle, the recipe says {recipe}.{far}', {
      readings: use.readings,
      typical,
      recipe,
      far,
    })
  return say('The recipe of {recipe} fits the last {readings} draws ({typical} in the middle).{far}', {
    recipe,
    readings: use.readings,
    typical,
    far,
  })
}

/** The latest readings of each product and size, in order of time. */
function cells(readings: readonly UseReading[]): Map<string, UseReading[]> {
  const sorted = [...readings].sort((a, b) => a.at - b.at)
  const grouped = Map.groupBy(sorted, reading => `${reading.productId}\n${reading.sizeClass}`)
  return new Map([...grouped].map(([key, list]) => [key, list.slice(-LATEST)]))
}
