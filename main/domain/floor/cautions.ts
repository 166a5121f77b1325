import { type CureProfile, type Leaving, leavingAge, ruleOf } from '../cure/index.ts'
import { say, word } from '../language/index.ts'
import type { UnitSystem } from '../measure/index.ts'
import type { ProductKind } from '../shop/index.ts'
import { type Coat, type CuringProduct, marksOf, type ProductsById } from './cureMarks.ts'

/** What common practice asks of whoever handles a kind of product. No source: the safety data sheet decides. */
const careOf: Readonly<Record<ProductKind, string>> = {
  wash: word('gloves for long work, keep it out of the eyes'),
  decontaminant: word(
    'gloves and eye protection, moving air, never on or beside an acid or a bleach; read section 3 for fluoride, which wants a face shield and a first-aid plan',
  ),
  compound: word('eye protection at the machine, no dust breathed'),
  polish: word('eye protection at the machine, no dust breathed'),
  wipe: word(
    'gloves, its vapour drawn off, metal cans joined by a bonding wire while pouring, no flame and no spark near it, used cloths in a closed metal bin',
  ),
  coating: word(
    'gloves and eye protection, its vapour drawn off where it is laid, a respirator only by the exposure and after that, no flame near it, used cloths in a closed metal bin',
  ),
  topper: word('gloves and eye protection, moving air, no flame near it'),
  consumable: word('what its label says'),
}

/** One line for whoever is handed a product: what its data sheet asks, or what is usual, and who decides. */
export function cautionWords({
  name,
  kind,
  caution = null,
}: Pick<CuringProduct, 'name' | 'kind'> & { caution?: string | null }): string {
  if (caution !== null) return caution
  return say(
    '{name}: usual care is {careOf} (common practice). Read its safety data sheet first; the sheet and local rules decide.',
    { name, careOf: say(careOf[kind]) },
  )
}

/** A line for each chemical among the products, those that cure first. */
export function cautionLines(
  products: ProductsById,
): { productId: string; productName: string; words: string }[] {
  return [...products.values()]
    .filter(product => product.kind !== 'consumable')
    .sort(
      (a, b) =>
        Number(b.cureProfile !== null) - Number(a.cureProfile !== null) || a.name.localeCompare(b.name),
    )
    .map(product => ({ productId: product.id, productName: product.name, words: cautionWords(product) }))
}

/**
 * Which figure of a coat's profile rules the handover, and whether it is met: never that the coating is safe.
 */
export function cureWords(
  coat: Coat,
  leaving: Leaving,
  nowAt: number,
  when: (at: number) => string,
  units: UnitSystem = 'metric',
): string {
  const profile: CureProfile = coat.product.cureProfile
  const { safeAt } = marksOf(coat, leaving)
  const dry = leavingAge(profile, leaving) > profile.handoverMin
  const rule = ruleOf(profile, dry ? 'keepDryEnds' : 'handoverSafe', units)!.words
  const state = !coat.actual
    ? say('With the coat as planned that is {safeAt}.', { safeAt: when(safeAt) })
    : safeAt <= nowAt
      ? say('That figure is met since {safeAt}.', { safeAt: when(safeAt) })
      : say('That figure is met from {safeAt}; not before.', { safeAt: when(safeAt) })
  return `${coat.product.name}. ${rule} ${state}`
}
