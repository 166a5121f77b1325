/** What a treatment may not say: steps nobody could do, and waits that no time can meet. */
import { wallWords } from '../calendar/index.ts'
import type { CureProfile } from '../cure/index.ts'
import { checkMinor } from '../money/index.ts'
import { refuse } from '../refusal.ts'
import type { Help } from '../schedule/types.ts'
import { type SizeClass, sizeClasses } from '../vehicle/index.ts'
import { checkOffers } from './bayNeeds.ts'
import type { CarCheck } from './carChecks.ts'
import { checkText } from './text.ts'
import {
  type Capability,
  type MissedWork,
  type ProductKind,
  type Skill,
  type Stage,
  stages,
} from './words.ts'

/** One hands-on step. Cure holds are not steps of their own: they follow from the product's profile. */
export interface TreatmentStep {
  readonly name: string
  readonly stage: Stage
  /** The capability its bay must have. */
  readonly needs: Capability
  /** What its bay must offer besides, all of it. Left out: nothing more. */
  readonly asks?: readonly string[]
  /** The skill each person needs; null: nobody of the crew is taken. */
  readonly skill: Skill | null
  /** How many people, 1..6. */
  readonly crew: number
  /**
   * 1..6 more people of its skill for a part of it: as much of that as the step is long on a smaller car. Null or left
   * out: none.
   */
  readonly help?: Help | null
  /** May pause at closing and go on at the next opening. */
  readonly splittable: boolean
  /** Must stay in the bay of the step before. */
  readonly sameBay: boolean
  /** Least and most elapsed minutes from the end of the step before to this start; null: no limit. */
  readonly waitMin: number | null
  readonly waitMax: number | null
  /**
   * Most elapsed minutes from its end to the start of the treatment's next step: what was wiped gathers dust again.
   * Null or left out: no limit but its product's.
   */
  readonly nextWithinMin?: number | null
  /** What it costs where the next step comes too late, and the minutes of abrading or taking off that go with it. */
  readonly missed?: MissedWork | null
  readonly missedMin?: number | null
  /** Hands-on minutes by size; 0: left out for that size. */
  readonly minutes: Readonly<Record<SizeClass, number>>
  /** Whether worn paint makes it longer. */
  readonly byCondition: boolean
  readonly productId: string | null
}

export interface Treatment {
  readonly name: string
  /** Minor units by size; 0: not priced. */
  readonly prices: Readonly<Record<SizeClass, number>>
  /** No step of it is done by one person alone: each takes at least two, where it takes anybody. Left out: no. */
  readonly needsTwoPeople?: boolean
  /** What is ticked off around it. Left out: nothing. */
  readonly checks?: readonly CarCheck[]
  readonly steps: readonly TreatmentStep[]
}

export interface TreatmentProduct {
  readonly id: string
  readonly name: string
  readonly kind: ProductKind
  readonly cureProfile: CureProfile | null
}

const longestStepMin = 10 * 24 * 60
const longestWaitMin = 60 * 24 * 60

/**
 * Refuses a treatment that could never be carried out. `products` are those in use; `longestOpeningMin` is the longest
 * unbroken opening of the shop's week.
 */
export function checkTreatment(
  treatment: Treatment,
  products: readonly TreatmentProduct[],
  longestOpeningMin: number,
): void {
  checkText(treatment.name, 'name', "The treatment's name")
  for (const size of sizeClasses) {
    const price = checkMinor(treatment.prices[size], `prices.${size}`)
    if (price < 0)
      refuse('price-negative', { [`prices.${size}`]: price }, 'A price is at least 0; give the amount.')
  }
  checkTakesTime(treatment.steps)
  treatment.steps.forEach((step, i) => {
    const field = `steps.${i}`
    checkWork(step, field, longestOpeningMin)
    checkHelp(step, field)
    checkWaits(step, field)
    checkMissed(step, field)
    checkProduct(step, field, products)
    const before = treatment.steps[i - 1]
    checkStageOrder(before, step, field)
  })
}

function checkWork(step: TreatmentStep, field: string, longestOpeningMin: number) {
  const name = checkText(step.name, `${field}.name`, "The step's name", 60)
  checkOffers(step.asks ?? [], `${field}.asks`)
  if (!Number.isInteger(step.crew) || step.crew < 1 || step.crew > 6)
    refuse('crew-bad', { [`${field}.crew`]: step.crew }, `${step.crew} people cannot be sent; use 1 to 6.`)
  for (const size of sizeClasses) {
    const minutes = step.minutes[size]
    if (!Number.isInteger(minutes) || minutes < 0 || minutes > longestStepMin)
      refuse(
        'duration-bad',
        { [`${field}.minutes.${size}`]: minutes },
        `${minutes} minutes is no time a step takes; use whole minutes from 0 (left out for this size) to ` +
          `${longestStepMin} (ten days).`,
      )
    if (!step.splittable && minutes > longestOpeningMin)
      refuse(
        'step-too-long',
        { [`${field}.minutes.${size}`]: minutes },
        `${name} takes ${wallWords(minutes)} h, but the shop is never open longer than ` +
          `${wallWords(longestOpeningMin)} h at a stretch: let it pause at closing, or make two steps of it.`,
      )
  }
}

function checkHelp({ name, skill, help, minutes }: TreatmentStep, field: string) {
  if (!help) return
  const longest = Math.max(...sizeClasses.map(size => minutes[size]))
  if (skill === null)
    refuse(
      'help-bad',
      { [`${field}.help.crew`]: help.crew },
      `"${name}" takes nobody, so nobody helps; give its skill.`,
    )
  if (!Number.isInteger(help.crew) || help.crew < 1 || help.crew > 6)
    refuse(
      'crew-bad',
      { [`${field}.help.crew`]: help.crew },
      `${help.crew} people cannot be sent; use 1 to 6.`,
    )
  if (!Number.isInteger(help.from) || help.from < 0 || help.from >= longest)
    refuse(
      'help-bad',
      { [`${field}.help.from`]: help.from },
      `"${name}" is over after ${longest} minutes; let the help come from 0 to ${longest - 1} minutes into it.`,
    )
  if (!Number.isInteger(help.minutes) || help.minutes < 1 || help.minutes > longest - help.from)
    refuse(
      'help-bad',
      { [`${field}.help.minutes`]: help.minutes },
      `"${name}" is over ${longest - help.from} minutes after the help comes; let it stay for 1 to ${longest - help.from}.`,
    )
}

function checkTakesTime(steps: readonly TreatmentStep[]) {
  if (steps.length === 0)
    refuse('steps-missing', { steps: [] }, 'A treatment without steps takes no time; add its first step.')
  const idle = steps.findIndex(step => sizeClasses.every(size => step.minutes[size] === 0))
  if (idle >= 0)
    refuse(
      'duration-bad',
      { [`steps.${idle}.minutes.medium`]: 0 },
      'This step takes no time on any size; give its minutes, or take it out.',
    )
}

function checkWaits({ waitMin, waitMax, nextWithinMin = null }: TreatmentStep, field: string) {
  for (const [name, wait] of [
    ['nextWithinMin', nextWithinMin],
    ['waitMin', waitMin],
    ['waitMax', waitMax],
  ] as const)
    if (wait !== null && (!Number.isInteger(wait) || wait < 0 || wait > longestWaitMin))
      refuse(
        'wait-bad',
        { [`${field}.${name}`]: wait },
        `${wait} minutes is no wait; use whole minutes from 0 to ${longestWaitMin} (sixty days), or leave it empty.`,
      )
  if (waitMin !== null && waitMax !== null && waitMin > waitMax)
    refuse(
      'waits-contradict',
      { [`${field}.waitMax`]: waitMax },
      `It must wait at least ${waitMin} minutes but at most ${waitMax}; exchange them, or leave one empty.`,
    )
}

/** A limit without its cost would leave the crew with a car nobody knows what to do with. */
function checkMissed({ name, stage, nextWithinMin, missed, missedMin }: TreatmentStep, field: string) {
  const least = missed === 'abrade' || missed === 'redo' ? 1 : 0
  const minutes = missedMin ?? 0
  if (nextWithinMin != null && !missed)
    refuse(
      'missed-unsaid',
      { [`${field}.missed`]: null },
      `Say what is done where the step after "${name}" comes too late: the same again, abrade, or take off and redo.`,
    )
  if (missed === 'again' && (stage === 'coat' || stage === 'topper'))
    refuse(
      'missed-bad',
      { [`${field}.missed`]: missed },
      `"${name}" lays something: laying it again on what is too old to coat holds no better; abrade it, or redo it.`,
    )
  if (!Number.isInteger(minutes) || minutes < least || minutes > longestStepMin)
    refuse(
      'duration-bad',
      { [`${field}.missedMin`]: minutes },
      `${minutes} minutes is no time that takes; give whole minutes from 1 to ${longestStepMin} (ten days).`,
    )
}

function checkProduct(step: TreatmentStep, field: string, products: readonly TreatmentProduct[]) {
  const product = products.find(({ id }) => id === step.productId)
  if (step.productId !== null && !product)
    refuse(
      'product-unknown',
      { [`${field}.productId`]: step.productId },
      'This product is not in use any more; choose another.',
    )
  const wanted = { coat: 'coating', topper: 'topper' } as const
  const kind = step.stage === 'coat' || step.stage === 'topper' ? wanted[step.stage] : null
  if (kind && product?.kind !== kind)
    refuse(
      'product-missing',
      { [`${field}.productId`]: step.productId },
      `A ${step.stage} step lays a ${kind}, whose cure profile says when the car may be touched and leave; choose it.`,
    )
  if (!kind && product?.cureProfile)
    refuse(
      'product-misplaced',
      { [`${field}.productId`]: step.productId },
      `${product.name} cures, so its step is a ${product.kind === 'topper' ? 'topper' : 'coat'} step; change the stage ` +
        'or the product.',
    )
}

/**
 * The chain of a car's visit is laid out stage by stage, so a treatment says its steps in that order too. A levelling
 * belongs to the layer it follows.
 */
function checkStageOrder(before: TreatmentStep | undefined, step: TreatmentStep, field: string) {
  if (step.stage === 'level') {
    if (before?.stage === 'coat' && step.productId === null) return
    refuse(
      before?.stage === 'coat' ? 'product-misplaced' : 'stage-order',
      { [`${field}.${before?.stage === 'coat' ? 'productId' : 'stage'}`]: step.stage },
      `"${step.name}" levels the coat laid right before it, while it is wet, with nothing of its own: put it behind its ` +
        'coat step without a product, or change its stage.',
    )
  }
  if (before && placeOf(step.stage) < placeOf(before.stage))
    refuse(
      'stage-order',
      { [`${field}.stage`]: step.stage },
      `A ${step.stage} step comes before every ${before.stage} step; move it up, or change its stage.`,
    )
}

/** The next layer follows the levelling of the one before. */
function placeOf(stage: Stage): number {
  return stages.indexOf(stage === 'level' ? 'coat' : stage)
}
