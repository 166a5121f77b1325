import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { convert } from './units.ts'

/** A container's two sizes kept apart: what its label says in US fluid ounces, and the round metric size it is sold as. */
export interface LabelSize {
  /** The label's fluid ounces in millilitres, exactly. */
  readonly exactMl: number
  /** What the metric size claims beyond the ounces; below zero where it claims less. */
  readonly missingMl: number
  readonly missingPercentOfSold: number
  /** The same gap in percent of the exact ounces. */
  readonly differencePercent: number
}

/**
 * How far a label's fluid ounces are from the metric size the container is sold as: 16 fl oz are 473 mL and are sold as
 * 500 mL (common practice, no source). Stock and prices go by what the container measures, never by either name alone.
 * Source of the exact volume: NIST Special Publication 811, appendix B.8.
 */
export function labelSize(labelFlOz: number, soldAsMl: number): LabelSize {
  checkSize(labelFlOz, 'labelFlOz', say('fl oz'))
  checkSize(soldAsMl, 'soldAsMl', 'mL')
  const exactMl = convert(labelFlOz, 'US fluid ounce', 'mL')
  const missingMl = soldAsMl - exactMl
  return {
    exactMl,
    missingMl,
    missingPercentOfSold: (100 * missingMl) / soldAsMl,
    differencePercent: (100 * missingMl) / exactMl,
  }
}

function checkSize(size: number, field: string, unit: string) {
  if (!(size > 0) || !Number.isFinite(size))
    refuse(
      'size-not-positive',
      { [field]: size },
      say('{size} {unit} is no container size; give one above 0.', { size, unit }),
    )
}
