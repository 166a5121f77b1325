/** What stands on the shelf: products and the containers they come in. */
import { say, unitsNow } from '../language/index.ts'
import { degreesWords } from '../measure/index.ts'
import { refuse } from '../refusal.ts'
import type { Unit } from './amount.ts'

export const PRODUCT_KINDS = [
  'wash',
  'decontaminant',
  'compound',
  'polish',
  'panel-wipe',
  'coating',
  'topper',
  'consumable',
] as const
export type ProductKind = (typeof PRODUCT_KINDS)[number]

export interface ShelfProduct {
  readonly id: string
  readonly name: string
  readonly kind: ProductKind
  /** How it is counted; consumables usually in pieces. */
  readonly unit: Unit
  /** g/ml from the data sheet, at shop temperature; null where nobody looked it up. Weighing needs it. */
  readonly densityGPerMl: number | null
  /** Days an opened container stays good; null where the maker names no limit. */
  readonly lifeAfterOpeningDays: number | null
  /** °C it must be kept between; null where the maker names no limit. */
  readonly storage: { readonly leastC: number; readonly mostC: number } | null
}

/** A size a product is sold in. What the label says and what was measured are two figures and stay two. */
export interface ContainerSize {
  readonly id: string
  readonly productId: string
  readonly labelCenti: number
  /** What such a container was found to hold; null until somebody measured. */
  readonly measuredCenti: number | null
  /** Codes printed on it, 14 digits each. */
  readonly gtins: readonly string[]
}

/** What a container counts for on the shelf: the measured content where it is known, else the label's. */
export function contentCenti(size: ContainerSize): number {
  return size.measuredCenti ?? size.labelCenti
}

/** How far the measured content is from the label's, as a share of the label's; null until measured. */
export function labelError(size: ContainerSize): number | null {
  return size.measuredCenti === null ? null : size.measuredCenti / size.labelCenti - 1
}

/** Refuses a product nobody could count, weigh or keep. */
export function checkProduct(product: ShelfProduct): void {
  if (!product.name.trim()) refuse('name-missing', { name: product.name }, say('Give the product a name.'))
  const { densityGPerMl: density, lifeAfterOpeningDays: life, storage } = product
  // Solvents lie near 0.7, abrasive pastes up to about 1.8 (common practice, no source): outside is a slip of the pen.
  if (density !== null && !(density >= 0.3 && density <= 5))
    refuse(
      'density-bad',
      { densityGPerMl: density },
      say('{density} g/ml is not a density of a liquid product; take it from the data sheet, water is 1.', {
        density,
      }),
    )
  if (life !== null && !(Number.isInteger(life) && life >= 1))
    refuse(
      'life-bad',
      { lifeAfterOpeningDays: life },
      say(
        '{life} is not a number of days; give 1 or more, or leave it empty where the maker names no limit.',
        { life },
      ),
    )
  if (storage !== null && !(storage.leastC < storage.mostC))
    refuse(
      'storage-backwards',
      { storage },
      say('Kept between {least} and {most} is no range; give the lower temperature first.', {
        least: degreesWords(storage.leastC, unitsNow()),
        most: degreesWords(storage.mostC, unitsNow()),
      }),
    )
}
