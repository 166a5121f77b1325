/** Which finished steps can be confirmed unseen, where all are drawn one after another as their recipes say. */
import { takeFirstExpired } from './firstExpired.ts'
import type { Holding } from './lot.ts'
import { type MixedLot, mixesLots } from './mixing.ts'

export interface RecipeDraw {
  readonly productId: string
  /** Hundredths of the product's unit, 0 or more. */
  readonly needCenti: number
  /** The lots of it on this car already, where it is a coating; null where two lots on one car do no harm. */
  readonly laid: readonly MixedLot[] | null
}

export interface FinishedStep {
  readonly jobId: string
  readonly draws: readonly RecipeDraw[]
}

export interface Bottle extends Holding {
  readonly batch: string | null
}

/** `short`: the bottles hold less than the recipe asks; `mixes`: a second batch would go onto the car. */
export type Look = 'short' | 'mixes'

/**
 * What of each step wants a look before it is confirmed, by product; nothing where all its draws are plain. The steps are
 * drawn in the order given, first expired first; one that wants a look draws nothing, as when only the plain are confirmed.
 * @param bottles what is left in each bottle now, by product
 * @param day the day number of the draws
 */
export function wantsLook(
  steps: readonly FinishedStep[],
  bottles: ReadonlyMap<string, readonly Bottle[]>,
  day: number,
): ReadonlyMap<string, Look>[] {
  const left = new Map(bottles)
  const laidNow = new Map<string, readonly MixedLot[]>()
  return steps.map(({ jobId, draws }) => {
    const looks = new Map<string, Look>()
    const then: (() => void)[] = []
    for (const { productId, needCenti, laid } of draws) {
      const own = left.get(productId) ?? []
      const { use, shortCenti } = takeFirstExpired(own, needCenti, day)
      const taken = new Map(use.map(({ lotId, centi }) => [lotId, centi]))
      const lots = own
        .filter(({ lotId }) => taken.has(lotId))
        .map(({ lotId, batch }) => ({ id: lotId, batch }))
      const car = `${jobId} ${productId}`
      const before = laidNow.get(car) ?? laid ?? []
      if (shortCenti > 0 || use.length === 0) looks.set(productId, 'short')
      else if (laid && mixesLots(before, lots)) looks.set(productId, 'mixes')
      then.push(() => {
        left.set(
          productId,
          own.map(each => drawnFrom(each, taken.get(each.lotId) ?? 0)),
        )
        laidNow.set(car, [...before, ...lots])
      })
    }
    if (looks.size === 0) for (const draw of then) draw()
    return looks
  })
}

function drawnFrom(bottle: Bottle, centi: number): Bottle {
  return centi === 0 ? bottle : { ...bottle, centi: bottle.centi - centi, opened: true }
}
