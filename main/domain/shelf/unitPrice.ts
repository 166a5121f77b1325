/** Prices of different sizes made comparable: by what a container measures where that is known, by its label else. */
import { say } from '../language/index.ts'
import { divideRounded } from '../money/decimal.ts'
import { refuse } from '../refusal.ts'
import { CENTI_PER_UNIT } from './amount.ts'
import { type ContainerSize, contentCenti } from './product.ts'

export interface SizePrice {
  readonly size: ContainerSize
  /** Price of one container, carriage shared in where the caller wants it so. */
  readonly priceMinor: number
}

export interface UnitPrice {
  readonly sizeId: string
  /** Minor units for 100 ml, g or pieces, rounded once. */
  readonly per100Minor: number
  /** Minor units for one unit, for comparing; not money to pay. */
  readonly perUnit: number
  readonly basis: 'measured' | 'label'
  /** What 100 units would cost by the label alone: it differs where the bottle holds more or less than it says. */
  readonly per100ByLabelMinor: number
  /** How much dearer than the cheapest, as a share; 0 for the cheapest. */
  readonly dearerBy: number
}

/** Compares sizes, the cheapest by unit first. */
export function compareSizes(prices: readonly SizePrice[]): UnitPrice[] {
  const exact = prices.map(({ size, priceMinor }, i) => {
    if (!Number.isSafeInteger(priceMinor) || priceMinor < 0)
      refuse(
        'money-bad',
        { [`${i}.priceMinor`]: priceMinor },
        say('{priceMinor} is not a price in minor units.', { priceMinor }),
      )
    return {
      sizeId: size.id,
      per100Minor: per100(priceMinor, contentCenti(size)),
      perUnit: (priceMinor * CENTI_PER_UNIT) / contentCenti(size),
      basis: size.measuredCenti === null ? ('label' as const) : ('measured' as const),
      per100ByLabelMinor: per100(priceMinor, size.labelCenti),
    }
  })
  const least = Math.min(...exact.map(price => price.perUnit))
  return exact
    .map(price => ({ ...price, dearerBy: least === 0 ? 0 : price.perUnit / least - 1 }))
    .sort((a, b) => a.perUnit - b.perUnit || (a.sizeId < b.sizeId ? -1 : 1))
}

function per100(priceMinor: number, centi: number): number {
  return Number(divideRounded(BigInt(priceMinor) * 100n * BigInt(CENTI_PER_UNIT), BigInt(centi), 'half-up'))
}
