/** The most packs worth having at once of goods that expire: never more than will be used before their date. */
import type { Demand } from './demand.ts'

export interface ExpiryCapInput {
  readonly demand: Demand
  /** Stock and deliveries under way: what is used before the new goods. */
  readonly inLineCenti: number
  /** Expected open days until the goods are here. */
  readonly leadDays: number
  /** Open days from delivery to expiry; null: they keep. */
  readonly lifeDays: number | null
  readonly packCenti: number
}

export interface ExpiryCap {
  readonly packs: number
  /** Expected use from now until the new goods expire. */
  readonly usedByThenCenti: number
}

/**
 * The last pack must be used up before it expires, behind everything already in line, at the expected use. Null where
 * the goods keep. That use is uncertain is costed in the policy, which buys less where a rest would often be lost; this
 * is the bound no order passes.
 */
export function expiryCap(input: ExpiryCapInput): ExpiryCap | null {
  if (input.lifeDays === null) return null
  const usedByThenCenti = input.demand.perDayCenti * (input.leadDays + input.lifeDays)
  const room = usedByThenCenti - Math.max(0, input.inLineCenti)
  return { packs: Math.max(0, Math.floor(room / input.packCenti + 1e-9)), usedByThenCenti }
}
