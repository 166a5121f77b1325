import type { CureProfile } from '../../domain/cure/index.ts'
import type { ProductsById } from './cureMarks.ts'

/** The cure profiles of those products that cure, by product id. */
export function profilesIn(products: ProductsById): Record<string, CureProfile> {
  const profiles: Record<string, CureProfile> = {}
  for (const { id, cureProfile } of products.values()) if (cureProfile) profiles[id] = cureProfile
  return profiles
}
