import { say, word } from '../language/index.ts'
import { normaliseCode } from './regime.ts'

/** Groups of chemicals kept together on a shelf, or apart. Common practice, no source; the data sheet decides. */
export const storageGroups = [
  'acid',
  'fluoride',
  'thioglycolate',
  'alkali',
  'ammonia',
  'bleach',
  'oxidiser',
  'peroxide',
  'flammable',
  'aerosol',
  'general',
] as const

export type StorageGroup = (typeof storageGroups)[number]

export const storageGroupWords: Readonly<Record<StorageGroup, string>> = {
  acid: word('acid (acid wheel cleaner, water-spot remover)'),
  fluoride: word('fluoride-bearing (some wheel cleaners and brighteners)'),
  thioglycolate: word('thioglycolate (most iron fallout removers)'),
  alkali: word('alkali (strong wash, degreaser)'),
  ammonia: word('ammonia (some glass cleaners)'),
  bleach: word('chlorine bleach'),
  oxidiser: word('oxidiser'),
  peroxide: word('peroxide (hardener, whitener)'),
  flammable: word('flammable solvent (panel wipe, coating, thinner)'),
  aerosol: word('aerosol can'),
  general: word('general (pH-neutral wash, polish, wax)'),
}

/** Why two groups are kept apart. Common practice, no source; the data sheets decide. */
const apart: readonly (readonly [StorageGroup, StorageGroup, string])[] = [
  ['fluoride', 'acid', word('acid sets hydrogen fluoride free from fluorides')],
  ['fluoride', 'alkali', word('together they heat up and spit')],
  ['fluoride', 'ammonia', word('together they heat up and spit')],
  ['fluoride', 'bleach', word('together they set poisonous chlorine gas free')],
  ['fluoride', 'oxidiser', word('together they may set poisonous gas free')],
  ['fluoride', 'peroxide', word('acid can make a peroxide decompose violently')],
  ['fluoride', 'flammable', word('acid vapour eats solvent cans')],
  ['fluoride', 'aerosol', word('acid vapour eats the cans')],
  ['thioglycolate', 'acid', word('acid sets poisonous hydrogen sulphide free from thioglycolates')],
  ['thioglycolate', 'fluoride', word('acid sets poisonous hydrogen sulphide free from thioglycolates')],
  ['thioglycolate', 'bleach', word('together they heat up and set poisonous gas free')],
  ['thioglycolate', 'oxidiser', word('together they may react violently')],
  ['thioglycolate', 'peroxide', word('together they may react violently')],
  ['acid', 'bleach', word('together they set poisonous chlorine gas free')],
  ['acid', 'alkali', word('together they heat up and spit')],
  ['acid', 'ammonia', word('together they heat up and spit')],
  ['acid', 'oxidiser', word('together they may catch fire or set poisonous gas free')],
  ['acid', 'peroxide', word('acid can make a peroxide decompose violently')],
  ['acid', 'flammable', word('acid vapour eats solvent cans, and some acids set solvents alight')],
  ['acid', 'aerosol', word('acid vapour eats the cans')],
  ['bleach', 'ammonia', word('together they set poisonous chloramine gas free')],
  ['bleach', 'flammable', word('bleach feeds a fire and may start one')],
  ['bleach', 'peroxide', word('together they heat up and set gas free')],
  ['bleach', 'aerosol', word('bleach feeds a fire and eats the cans')],
  ['oxidiser', 'flammable', word('an oxidiser feeds a fire and may start one')],
  ['oxidiser', 'aerosol', word('an oxidiser feeds a fire and may start one')],
  ['oxidiser', 'peroxide', word('together they may decompose violently')],
  ['oxidiser', 'ammonia', word('together they may react violently')],
  ['peroxide', 'flammable', word('a peroxide feeds a fire and may start one')],
  ['peroxide', 'aerosol', word('a peroxide feeds a fire and may start one')],
  ['peroxide', 'alkali', word('alkali can make a peroxide decompose violently')],
  ['peroxide', 'ammonia', word('ammonia can make a peroxide decompose violently')],
]

/** Why two groups are kept apart, or null when they may stand together. */
export function whyApart(a: StorageGroup, b: StorageGroup): string | null {
  const why = apart.find(([x, y]) => (x === a && y === b) || (x === b && y === a))?.[2]
  return why ? say(why) : null
}

export interface ShelvedProduct {
  readonly id: string
  readonly name: string
  /** The shelf, cabinet or room it stands in. */
  readonly place: string
  /** Null where the data sheet is silent. */
  readonly group: StorageGroup | null
}

export interface StorageWarning {
  readonly place: string
  /** The products concerned: two that clash, or one nobody can place. */
  readonly ids: readonly string[]
  readonly message: string
}

/**
 * Products that stand together and should not, and those of which nobody knows. One warning for each clashing pair in a
 * place; a place without a clash gives none. A warning records and advises; it refuses nothing.
 */
export function storageWarnings(products: readonly ShelvedProduct[]): StorageWarning[] {
  const warnings: StorageWarning[] = []
  const byPlace = Map.groupBy(products, product => product.place)
  for (const [place, together] of byPlace) {
    together.forEach((a, i) => {
      if (a.group === null) {
        if (together.length > 1)
          warnings.push({
            place,
            ids: [a.id],
            message: say(
              '{name}: nobody has entered how to store it. Keep it apart until its data sheet or the supplier says.',
              { name: a.name },
            ),
          })
        return
      }
      for (const b of together.slice(i + 1)) {
        const why = b.group && whyApart(a.group, b.group)
        if (why)
          warnings.push({
            place,
            ids: [a.id, b.id],
            message: say(
              '{name} and {name2} stand together in {place}: {why}. Keep them apart; the data sheets decide.',
              { name: a.name, name2: b.name, place, why },
            ),
          })
      }
    })
  }
  return warnings
}

/**
 * The group that hazard codes and the pH suggest, to be confirmed by a person; null where they do not tell. pH under 4 is
 * taken as acid and over 10 as alkali (common practice, no source). A chemical that burns the skin and poisons as well may
 * be a fluoride, which is no acid like another: that only section 3 of the sheet tells, and so does a thioglycolate.
 */
export function suggestGroup(codes: readonly string[], ph: number | null = null): StorageGroup | null {
  const parts = codes.flatMap(code => normaliseCode(code).split('+'))
  const any = (...list: string[]) => list.some(code => parts.includes(code))
  if (any('EUH206', 'EUH031')) return 'bleach'
  if (any('H240', 'H241', 'H242')) return 'peroxide'
  if (any('H270', 'H271', 'H272')) return 'oxidiser'
  if (any('H222', 'H223', 'H229')) return 'aerosol'
  if (any('H224', 'H225', 'H226', 'H228')) return 'flammable'
  const poisons = any('H300', 'H301', 'H310', 'H311', 'H330', 'H331')
  if (any('H314') && poisons && (ph === null || ph < 7)) return null
  if (ph !== null && ph < 4) return 'acid'
  if (ph !== null && ph > 10) return 'alkali'
  // Corrosive without a pH may be either, and those two must not stand together.
  return any('H290', 'H314') || ph === null ? null : 'general'
}
