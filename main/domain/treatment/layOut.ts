/** From what was sold to a chain of steps the scheduler can place: hands-on work with its cure holds between. */

import { type Leaving, leavingAge } from '../cure/index.ts'
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import {
  type Condition,
  type ConditionFactors,
  type Finish,
  type HandoverRule,
  needsKey,
  type SizeClass,
  type TreatmentStep,
} from '../shop/index.ts'
import { chainOf, type Link } from './chainOf.ts'
import { type CureClock, type CureDemand, cover, demandsOn } from './cureClocks.ts'
import { wetNotes } from './dry.ts'
import { helpWithin } from './help.ts'
import { levellingNotes } from './levelling.ts'
import { type Draft, elapsed, keepWithin, limitsOf, minuteWords, placeIn } from './limits.ts'
import type { LaidStep, Products, TreatmentTemplate } from './template.ts'

export interface LayOutInput {
  readonly treatments: readonly TreatmentTemplate[]
  /** By id: those the steps name. */
  readonly products: Products
  readonly sizeClass: SizeClass
  readonly finish: Finish
  readonly condition: Condition
  /** What hands-on minutes are multiplied with, for steps that say so; 1 is as written. */
  readonly conditionFactors: ConditionFactors
  /** What hands-on minutes besides are multiplied with, as the shop has learned; what is laid keeps its minutes. */
  readonly stretch?: number
  readonly gridMin: number
  /** Which of a profile's handover figures the last hold runs to. */
  readonly handoverRule: HandoverRule
  /** Whether it runs until the car may get wet, too. */
  readonly leaving: Leaving
}

export interface Laid {
  readonly steps: LaidStep[]
  readonly handsOnMin: number
  /** What somebody at the desk should know about this chain, in words. */
  readonly notes: string[]
}

/**
 * Lays out one car's visit: stages in order, shared steps once, hands-on minutes by size class and condition rounded
 * up to the grid, and after each coat the holds its product asks for: until the next layer, until the topper, until
 * the car may be touched, and at the end until the handover figure, and until it may get wet unless it leaves under
 * cover. A hold starts the moment its coat ends, in the
 * same bay, and lets the car be moved once every coat on it is tack-free. What must have passed by then counts toward
 * a later hold, so nothing is waited for twice.
 * @throws Refusal naming the field: correction on paint that is never polished, a coat without a cure profile, a
 * second layer no data sheet names, waits that contradict each other.
 */
export function layOut(input: LayOutInput): Laid {
  const { treatments, products, gridMin } = input
  if (treatments.length === 0)
    refuse('nothing-chosen', { treatmentIds: [] }, say('Choose at least one treatment.'))
  const chain = chainOf(treatments.map(manned), step => handsOnMinutes(step, input))
  if (chain.length === 0)
    refuse(
      'nothing-to-do',
      { treatmentIds: treatments.map(treatment => treatment.name) },
      say('None of the chosen treatments has a step for a vehicle of class {sizeClass}; choose another.', {
        sizeClass: say(input.sizeClass),
      }),
    )
  const steps: Draft[] = []
  const placeOf = new Map<Link, number>()
  const clocks: CureClock[] = []
  const notes = [...treatments.flatMap(treatment => levellingNotes(treatment.steps)), ...wetNotes(chain)]
  for (const [i, link] of chain.entries()) {
    checkFinish(link, input)
    const product = profileOf(link, products)
    const demands = demandsOn(link, product?.productId ?? null, clocks)
    const binding = bindingOf([...demands, ...demandsAhead(link, chain[i + 1], products, clocks)], steps)
    if (binding) steps.push(holdFor(binding, clocks, steps, gridMin))
    const at = steps.length
    const work = workFor(link, clocks, steps)
    steps.push(work)
    placeOf.set(link, at)
    for (const wait of link.waits) {
      const after = placeIn(placeOf, wait.after)
      const least = (wait.waitMin ?? 0) - elapsed(steps, after, at)
      if (least > 0) work.waitMin = (work.waitMin ?? 0) + least
      if (wait.sameBay) for (const step of steps.slice(after + 1)) step.sameBay = true
    }
    for (const limit of limitsOf(link, demands, placeOf)) keepWithin(limit, steps, at, gridMin)
    for (const { most, clock } of demands)
      if (most !== null)
        notes.push(
          say(
            '"{name}" must start within {most} of the end of "{name2}" ({productName}), so that the first and the last panel keep their window.',
            {
              name: link.template.name,
              most: minuteWords(most),
              name2: clock.link.template.name,
              productName: clock.productName,
            },
          ),
        )
    if (product) {
      cover(clocks, link)
      clocks.push({ ...product, link, at, covered: false })
    }
  }
  const last = bindingOf(
    clocks.map(clock => ({
      clock,
      least: leavingAge(clock.profile, input.leaving, input.handoverRule),
      most: null,
      why: 'handover' as const,
    })),
    steps,
  )
  if (last) steps.push(holdFor(last, clocks, steps, gridMin))
  return { steps, handsOnMin: chain.reduce((sum, link) => sum + link.minutes, 0), notes }
}

/** The treatment with the people it needs at every step. */
function manned(treatment: TreatmentTemplate): TreatmentTemplate {
  if (!treatment.needsTwoPeople) return treatment
  return { ...treatment, steps: treatment.steps.map(step => ({ ...step, crew: Math.max(2, step.crew) })) }
}

/** Minutes on the grid; the small allowance keeps 60 × 1.1 from becoming one grid step more than 66. */
function handsOnMinutes(step: TreatmentStep, input: LayOutInput): number {
  const learned = isLaying(step) ? 1 : (input.stretch ?? 1)
  const factor = learned * (step.byCondition ? input.conditionFactors[input.condition] : 1)
  return ceilTo(step.minutes[input.sizeClass] * factor - 1e-9, input.gridMin)
}

/** Laying has the windows of its product, whoever does it. */
export function isLaying({ stage }: { readonly stage: string }): boolean {
  return stage === 'coat' || stage === 'level' || stage === 'topper'
}

function ceilTo(minutes: number, gridMin: number): number {
  return Math.max(0, Math.ceil(minutes / gridMin) * gridMin)
}

/** Matte, satin and wrapped panels lose their finish when polished. Common practice. */
function checkFinish(link: Link, { finish, products }: LayOutInput): void {
  if (finish === 'gloss') return
  const kind = link.template.productId ? products.get(link.template.productId)?.kind : undefined
  const { stage } = link.template
  if (stage === 'correct' || stage === 'test' || kind === 'compound' || kind === 'polish')
    refuse(
      'never-polished',
      { treatmentIds: link.template.name },
      say(
        '"{name}" polishes, and a {finish} finish is never polished: leave that treatment out, or correct the finish noted for this vehicle.',
        { name: link.template.name, finish: say(finish) },
      ),
    )
}

function profileOf(link: Link, products: Products) {
  const { stage, productId, name } = link.template
  const product = productId === null ? undefined : products.get(productId)
  if (!product || productId === null) return null
  if (product.cureProfile && (stage === 'coat' || stage === 'topper'))
    return { productId, productName: product.name, profile: product.cureProfile }
  if (product.kind === 'coating' || product.kind === 'topper')
    refuse(
      'no-cure-profile',
      { [`${link.field}.productId`]: product.name },
      product.cureProfile
        ? say(
            '"{name}" lays {name2}; put the step into the stage "coat" or "topper", so that its cure is kept.',
            { name, name2: product.name },
          )
        : say(
            '{name} has no cure profile, so nobody can say when "{name2}" lets the car go; enter one first.',
            { name: product.name, name2: name },
          ),
    )
  return null
}

/** The demand that keeps the car waiting longest beyond what has passed anyway; null when none does. */
function bindingOf(demands: readonly CureDemand[], steps: readonly Draft[]) {
  let binding: (CureDemand & { left: number }) | null = null
  for (const demand of demands) {
    const left = demand.least - elapsed(steps, demand.clock.at, steps.length)
    if (left > (binding?.left ?? 0)) binding = { ...demand, left }
  }
  return binding
}

const holdNames: Record<CureDemand['why'], string> = {
  'tack-free': word('Cure until safe to touch'),
  dry: word('Keep dry'),
  recoat: word('Cure before the next layer'),
  topper: word('Cure before the topper'),
  handover: word('Cure before pick-up'),
}

function holdFor(
  { clock, left, why }: CureDemand & { left: number },
  clocks: readonly CureClock[],
  steps: readonly Draft[],
  gridMin: number,
): Draft {
  const minutes = ceilTo(left, gridMin)
  const moveAfter = untilTackFree(clocks, steps, steps.length)
  const before = steps.at(-1)
  return {
    kind: 'hold',
    name: say(holdNames[why]),
    stage: clock.link.template.stage,
    minutes,
    needs: 'cure',
    // Once every coat is tack-free it may also be moved at the hold's very start.
    sameBay: moveAfter > 0,
    waitMin: null,
    // Work that pauses at closing may end between two grid points, where no hold can start.
    waitMax: before?.kind === 'work' && before.split ? null : 0,
    moveAfter: moveAfter < minutes ? moveAfter : null,
    productId: clock.productId,
  }
}

/**
 * What the clocks ask of the step after one that may not wait long for it: the car waits before the wipe, not between
 * the wipe and the coat.
 */
function demandsAhead(
  link: Link,
  next: Link | undefined,
  products: Products,
  clocks: readonly CureClock[],
): CureDemand[] {
  if (link.template.nextWithinMin == null || !next?.waits.some(wait => wait.after === link)) return []
  return demandsOn(next, profileOf(next, products)?.productId ?? null, clocks).map(demand => ({
    ...demand,
    least: demand.least - link.minutes,
  }))
}

/** Minutes from the start of step `at` until the last of the coats is tack-free; 0 when all surely are. */
function untilTackFree(clocks: readonly CureClock[], steps: readonly Draft[], at: number): number {
  return Math.max(0, ...clocks.map(clock => clock.profile.tackFreeMin - elapsed(steps, clock.at, at)))
}

function workFor(link: Link, clocks: readonly CureClock[], steps: readonly Draft[]): Draft {
  const { name, stage, skill, crew, splittable, productId, missed, missedMin } = link.template
  const help = helpWithin(link.template, link.minutes)
  return {
    kind: 'work',
    name: name.trim(),
    stage,
    minutes: link.minutes,
    needs: needsKey(link.template.needs, link.template.asks),
    skill,
    crew: skill === null ? 0 : crew,
    ...(skill !== null && help && { help }),
    // A coat is laid in one go, and what may not wait for the next is not begun on one day and ended on another.
    split: splittable && stage !== 'coat' && stage !== 'topper' && link.template.nextWithinMin == null,
    // A car with a coat that is not tack-free stays where it is.
    sameBay: steps.length > 0 && untilTackFree(clocks, steps, steps.length) > 0,
    waitMin: null,
    waitMax: null,
    productId,
    ...(missed && { missed, missedMin: missedMin ?? null }),
  }
}
