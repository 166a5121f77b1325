import type { SizeClass } from '../shop/index.ts'
import { chainOf } from './chainOf.ts'
import type { TreatmentTemplate } from './template.ts'

/** A step of a chain, and the minutes it takes in each treatment it belongs to, by the treatment's place. */
export interface SharedStep {
  readonly name: string
  readonly minutesIn: ReadonlyMap<number, number>
}

/** The steps that treatments come to together, each with whose they are: a wash they share belongs to all of them. */
export function sharedSteps(treatments: readonly TreatmentTemplate[], sizeClass: SizeClass): SharedStep[] {
  return chainOf(treatments, step => step.minutes[sizeClass]).map(
    ({ template, treatments: whose, minutes }) => ({
      name: template.name.trim(),
      minutesIn: new Map([...whose].map(t => [t, minutes])),
    }),
  )
}
