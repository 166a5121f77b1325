import type { Condition } from '../shop/index.ts'
import type { TreatmentTemplate } from './template.ts'

/** What a shop charges more for paint that takes longer; decimals from 0 to 100. */
interface DearerBy {
  readonly wornPercent: string
  readonly heavyPercent: string
}

/**
 * Percent by which a treatment costs more on paint in this condition: what the shop has set, where a step of it takes
 * longer by condition; nothing for good paint, and for what is done alike on any.
 */
export function conditionPercent(
  { steps }: Pick<TreatmentTemplate, 'steps'>,
  condition: Condition,
  { wornPercent, heavyPercent }: DearerBy,
): string {
  if (condition === 'good' || steps.every(step => !step.byCondition)) return '0'
  return condition === 'worn' ? wornPercent : heavyPercent
}
