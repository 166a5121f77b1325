/** Two treatments of one visit that would coat the same thing twice. */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import type { CoatingFamily, ProductKind, TreatmentStep } from '../shop/index.ts'

/** What of a treatment is needed to say what it coats. */
export interface CoatingTreatment {
  readonly name: string
  readonly steps: readonly Pick<TreatmentStep, 'productId'>[]
}

interface FamilyProduct {
  readonly name: string
  readonly kind: ProductKind
  readonly family: CoatingFamily
}

export type FamilyProducts = ReadonlyMap<string, FamilyProduct>

export interface CoatedTwice {
  readonly family: CoatingFamily
  /** Where the two stand in what was given. */
  readonly places: readonly [number, number]
  readonly words: string
}

const familyWords: Readonly<Record<CoatingFamily, string>> = {
  paint: word('the paint'),
  wheels: word('the wheels'),
  glass: word('the glass'),
  trim: word('the trim'),
  interior: word('the interior'),
}

/**
 * The first two treatments that lay a coating of one family, or null. Several layers, or a base and its top coat, belong
 * into one treatment, whose sheet allows them: two treatments know nothing of each other's coats, and a coating does not
 * bond to another maker's fresh one (common practice, no source; the data sheets decide).
 */
export function coatedTwice(
  treatments: readonly CoatingTreatment[],
  products: FamilyProducts,
): CoatedTwice | null {
  const first = new Map<CoatingFamily, { place: number; treatment: string; product: string }>()
  for (const [place, { name: treatment, steps }] of treatments.entries())
    for (const { productId } of steps) {
      const product = productId === null ? undefined : products.get(productId)
      if (product?.kind !== 'coating') continue
      const { family } = product
      const before = first.get(family)
      if (!before) first.set(family, { place, treatment, product: product.name })
      else if (before.place !== place)
        return {
          family,
          places: [before.place, place],
          words: say(
            '{treatment} ({product}) and {treatment2} ({name}) both coat {familyWords}: choose one of them, or, if one of the products is not for {familyWords}, say what it is for under Settings, Products.',
            {
              treatment: before.treatment,
              product: before.product,
              treatment2: treatment,
              name: product.name,
              familyWords: say(familyWords[family]),
            },
          ),
        }
    }
  return null
}

/** @throws Refusal `coated-twice` naming both treatments and their coatings. */
export function assertOneCoating(treatments: readonly CoatingTreatment[], products: FamilyProducts): void {
  const twice = coatedTwice(treatments, products)
  if (twice)
    refuse('coated-twice', { treatmentIds: twice.places.map(at => treatments[at]?.name) }, twice.words)
}
