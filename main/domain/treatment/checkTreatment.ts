/** What a treatment may not say. Each refusal names the field and what would do instead. */
import { Refusal } from '../refusal.ts'
import { conditions, stages } from '../shop/words.ts'
import { sizeClasses } from '../vehicle/index.ts'
import { type LayOutInput, layOut } from './layOut.ts'
import type { Products, StepTemplate, TreatmentTemplate } from './template.ts'

/** What of the shop's settings a treatment is laid out by. */
export type LayOutRules = Pick<LayOutInput, 'gridMin' | 'handoverRule' | 'conditionFactors'>

const longestMin = 7 * 1440
const longestWaitMin = 60 * 1440

/**
 * Refuses a treatment nobody could carry out: no steps, durations or waits that are negative or not whole, a wait
 * whose minimum is past its maximum, stages out of order, a coat that pauses at closing, a product that is not there,
 * waits that contradict what the products' cure profiles ask. `field` of the refusal is a path such as
 * "steps.2.waitMax".
 */
export function checkTreatment(treatment: TreatmentTemplate, products: Products, shop: LayOutRules): void {
  if (treatment.steps.length === 0)
    throw new Refusal('steps-missing', 'steps', [], 'A treatment needs at least one step; add one.')
  treatment.steps.forEach((step, i) => {
    checkStep(step, `steps.${i}`)
    if (step.productId !== null && !products.has(step.productId))
      throw new Refusal(
        'product-unknown',
        `steps.${i}.productId`,
        step.productId,
        `The product of "${step.name}" is not on the list; choose another.`,
      )
    const before = treatment.steps[i - 1]
    if (before && stages.indexOf(step.stage) < stages.indexOf(before.stage))
      throw new Refusal(
        'stage-order',
        `steps.${i}.stage`,
        step.stage,
        `"${step.name}" (${step.stage}) stands after "${before.name}" (${before.stage}); the stages go ` +
          `${stages.join(', ')}: move it up, or give it a later stage.`,
      )
  })
  checkChain(treatment, products, shop)
}

function checkStep(step: StepTemplate, field: string): void {
  if (step.name.trim() === '')
    throw new Refusal('text-missing', `${field}.name`, step.name, 'Give the step a name.')
  for (const size of sizeClasses) checkMinutes(step.minutes[size], `${field}.minutes.${size}`, longestMin)
  if (sizeClasses.every(size => step.minutes[size] === 0))
    throw new Refusal(
      'duration-bad',
      `${field}.minutes.${sizeClasses[0]}`,
      0,
      `"${step.name}" takes no time on any vehicle; give its minutes or take it out.`,
    )
  if (step.skill !== null && !(Number.isInteger(step.crew) && step.crew >= 1 && step.crew <= 9))
    throw new Refusal('crew-bad', `${field}.crew`, step.crew, `${step.crew} people cannot do it; use 1 to 9.`)
  if (step.waitMin !== null) checkMinutes(step.waitMin, `${field}.waitMin`, longestWaitMin)
  if (step.waitMax !== null) checkMinutes(step.waitMax, `${field}.waitMax`, longestWaitMin)
  if (step.waitMin !== null && step.waitMax !== null && step.waitMin > step.waitMax)
    throw new Refusal(
      'waits-contradict',
      `${field}.waitMax`,
      step.waitMax,
      `"${step.name}" must wait at least ${step.waitMin} minutes and at most ${step.waitMax}; give a maximum of ` +
        `${step.waitMin} or more.`,
    )
  if (step.splittable && (step.stage === 'coat' || step.stage === 'topper'))
    throw new Refusal(
      'coat-split',
      `${field}.splittable`,
      true,
      `"${step.name}" lays a coat, which cannot pause at closing; let it be done in one go.`,
    )
}

function checkMinutes(minutes: number, field: string, most: number): void {
  if (!Number.isInteger(minutes) || minutes < 0 || minutes > most)
    throw new Refusal(
      'duration-bad',
      field,
      minutes,
      `${minutes} is not a duration; use whole minutes from 0 to ${most}.`,
    )
}

/** Lays the treatment out for every kind of vehicle that has steps of it, to see that its waits can be kept. */
function checkChain(treatment: TreatmentTemplate, products: Products, shop: LayOutRules): void {
  for (const sizeClass of sizeClasses) {
    if (treatment.steps.every(step => step.minutes[sizeClass] === 0)) continue
    for (const condition of conditions)
      try {
        layOut({
          ...shop,
          treatments: [treatment],
          products,
          sizeClass,
          finish: 'gloss',
          condition,
        })
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
        throw new Refusal(error.code, error.field.replace(/^treatments\.0\./, ''), error.value, error.message)
      }
  }
}
