/** What a treatment may not say: steps nobody could do, and waits that no time can meet. */

import { wallWords } from '../calendar/index.ts'
import type { CureProfile } from '../cure/index.ts'
import { say } from '../language/index.ts'
import { checkMinor } from '../money/index.ts'
import { refuse } from '../refusal.ts'
import type { Help } from '../schedule/types.ts'
import { type SizeClass, sizeClasses } from '../vehicle/index.ts'
import { checkOffers } from './bayNeeds.ts'
import type { CarCheck } from './carChecks.ts'
import { checkMissed, checkStageOrder, longestStepMin } from './checkStepOrder.ts'
import { checkText } from './text.ts'
import {
  type Capability,
  kindWords,
  type MissedWork,
  type ProductKind,
  type Skill,
  type Stage,
  stageWords,
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
  checkText(treatment.name, 'name', say("The treatment's name"))
  for (const size of sizeClasses) {
    const price = checkMinor(treatment.prices[size], `prices.${size}`)
    if (price < 0)
      refuse('price-negative', { [`prices.${size}`]: price }, say('A price is at least 0; give the amount.'))
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
  const name = checkText(step.name, `${field}.name`, say("The step's name"), 60)
  checkOffers(step.asks ?? [], `${field}.asks`)
  if (!Number.isInteger(step.crew) || step.crew < 1 || step.crew > 6)
    refuse(
      'crew-bad',
      { [`${field}.crew`]: step.crew },
      say('{crew} people cannot be assigned; use 1 to 6.', { crew: step.crew }),
    )
  for (const size of sizeClasses) {
    const minutes = step.minutes[size]
    if (!Number.isInteger(minutes) || minutes < 0 || minutes > longestStepMin)
      refuse(
        'duration-bad',
        { [`${field}.minutes.${size}`]: minutes },
        say(
          '{minutes} minutes is no time a step takes; use whole minutes from 0 (left out for this size) to {longestStepMin} (ten days).',
          { minutes, longestStepMin },
        ),
      )
    if (!step.splittable && minutes > longestOpeningMin)
      refuse(
        'step-too-long',
        { [`${field}.minutes.${size}`]: minutes },
        say(
          '{name} takes {minutes} h, but the shop is never open longer than {longestOpeningMin} h at a stretch: let it pause at closing, or make two steps of it.',
          { name, minutes: wallWords(minutes), longestOpeningMin: wallWords(longestOpeningMin) },
        ),
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
      say('"{name}" takes nobody, so nobody helps; give its skill.', { name }),
    )
  if (!Number.isInteger(help.crew) || help.crew < 1 || help.crew > 6)
    refuse(
      'crew-bad',
      { [`${field}.help.crew`]: help.crew },
      say('{crew} people cannot be assigned; use 1 to 6.', { crew: help.crew }),
    )
  if (!Number.isInteger(help.from) || help.from < 0 || help.from >= longest)
    refuse(
      'help-bad',
      { [`${field}.help.from`]: help.from },
      say(
        '"{name}" is over after {longest} minutes; let the help come from 0 to {longest2} minutes into it.',
        { name, longest, longest2: longest - 1 },
      ),
    )
  if (!Number.isInteger(help.minutes) || help.minutes < 1 || help.minutes > longest - help.from)
    refuse(
      'help-bad',
      { [`${field}.help.minutes`]: help.minutes },
      say('"{name}" is over {longest} minutes after the help comes; let it stay for 1 to {longest}.', {
        name,
        longest: longest - help.from,
      }),
    )
}

function checkTakesTime(steps: readonly TreatmentStep[]) {
  if (steps.length === 0)
    refuse(
      'steps-missing',
      { steps: [] },
      say('A treatment without steps takes no time; add its first step.'),
    )
  const idle = steps.findIndex(step => sizeClasses.every(size => step.minutes[size] === 0))
  if (idle >= 0)
    refuse(
      'duration-bad',
      { [`steps.${idle}.minutes.medium`]: 0 },
      say('This step takes no time on any size; give its minutes, or take it out.'),
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
        say(
          '{wait} minutes is no wait; use whole minutes from 0 to {longestWaitMin} (sixty days), or leave it empty.',
          { wait, longestWaitMin },
        ),
      )
  if (waitMin !== null && waitMax !== null && waitMin > waitMax)
    refuse(
      'waits-contradict',
      { [`${field}.waitMax`]: waitMax },
      say(
        'It must wait at least {waitMin} minutes but at most {waitMax}; exchange them, or leave one empty.',
        { waitMin, waitMax },
      ),
    )
}

function checkProduct(step: TreatmentStep, field: string, products: readonly TreatmentProduct[]) {
  const product = products.find(({ id }) => id === step.productId)
  if (step.productId !== null && !product)
    refuse(
      'product-unknown',
      { [`${field}.productId`]: step.productId },
      say('This product is not in use any more; choose another.'),
    )
  const wanted = { coat: 'coating', topper: 'topper' } as const
  const kind = step.stage === 'coat' || step.stage === 'topper' ? wanted[step.stage] : null
  if (kind && product?.kind !== kind)
    refuse(
      'product-missing',
      { [`${field}.productId`]: step.productId },
      say(
        'A {stage} step lays a {kind}, whose cure profile says when the car may be touched and leave; choose it.',
        { stage: stageWords(step.stage), kind: kindWords(kind) },
      ),
    )
  if (!kind && product?.cureProfile)
    refuse(
      'product-misplaced',
      { [`${field}.productId`]: step.productId },
      say('{name} cures, so its step is a {kind} step; change the stage or the product.', {
        name: product.name,
        kind: stageWords(product.kind === 'topper' ? 'topper' : 'coat'),
      }),
    )
}
