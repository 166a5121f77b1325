import { type SizeClass, shareOf, sizeClasses } from '../shop/index.ts'
import type { TreatmentTemplate } from './template.ts'

/**
 * A treatment laid over a `share` of the paint (0 to 1, not 0): what is done panel by panel takes that part of its time, up
 * to the next minute; a wash, a drying and the finish take all of theirs.
 */
export function partOf(treatment: TreatmentTemplate, share: number): TreatmentTemplate {
  if (share === 1) return treatment
  const steps = treatment.steps.map(step => {
    const part = shareOf(step, share)
    const minutes = (size: SizeClass) => Math.ceil(step.minutes[size] * part)
    return {
      ...step,
      minutes: Object.fromEntries(sizeClasses.map(size => [size, minutes(size)])) as typeof step.minutes,
    }
  })
  return { ...treatment, steps }
}

/**
 * Of a treatment's price, 0 to 1, what is left where it is laid over a `share` of the paint: its steps weighed by their
 * minutes, those done panel by panel by that share and the others whole. A wash costs the same for a front end.
 */
export function priceShare({ steps }: TreatmentTemplate, share: number, size: SizeClass): number {
  const whole = steps.reduce((sum, step) => sum + step.minutes[size], 0)
  if (whole === 0) return share
  return steps.reduce((sum, step) => sum + step.minutes[size] * shareOf(step, share), 0) / whole
}
