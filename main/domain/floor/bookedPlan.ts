import type { Leaving } from '../cure/index.ts'
import { say } from '../language/index.ts'
import { Refusal } from '../refusal.ts'
import { checkPlan, type Plan, type Problem, reasonText, type Step } from '../schedule/index.ts'
import type { MissedWork } from '../shop/index.ts'
import { listWords } from '../words.ts'
import { leavingTimes, type ProductsById } from './cureMarks.ts'
import { crewRows, peopleOf } from './floorJobs.ts'
import { type Named, wordsFor } from './shopWords.ts'

/**
 * The last look before a plan is saved, against everything booked by then: no rule of the floor is broken, whoever
 * made the plan.
 * @throws Refusal with the code `stale` that says in words what stands in the way now.
 */
export function assertFits(
  shop: Named,
  problem: Problem,
  plan: Plan,
  stepNames: readonly string[],
  wayOut = say('Look at the offers again.'),
): void {
  const violations = checkPlan(problem, plan)
  if (violations.length === 0) return
  const words = wordsFor(shop, stepNames)
  // What took the bay says more than whose time it took.
  const first = violations.filter(({ code }) => code === 'bayTaken' || code === 'bayClosed')
  const said = [...new Set([...first, ...violations].map(violation => reasonText(violation, words)))].slice(
    0,
    2,
  )
  throw new Refusal(
    'stale',
    'plan',
    violations,
    say('This place is gone: {reasons}. {wayOut}', { reasons: listWords(said), wayOut }),
  )
}

interface PlannedStep {
  readonly name: string
  readonly stage: string
  readonly productId: string | null
  readonly missed?: MissedWork
  readonly missedMin?: number | null
}

/** The step rows of a job as planned, to be created with it or instead of its old ones. */
export function stepRows(steps: readonly (Step & PlannedStep)[], plan: Plan) {
  return plan.steps.map((placed, position) => {
    const step = steps[position]!
    return {
      position,
      kind: step.kind,
      name: step.name,
      stage: step.stage,
      needs: step.needs ?? '',
      skill: step.kind === 'work' ? step.skill : null,
      crewCount: step.kind === 'work' ? step.crew : 0,
      ...(step.kind === 'work' && step.help && { help: { ...step.help } }),
      splittable: step.kind === 'work' && step.split,
      sameBay: step.sameBay ?? false,
      waitMin: step.waitMin ?? null,
      waitMax: step.waitMax ?? null,
      minutes: step.minutes,
      moveAfterMin: step.kind === 'hold' ? (step.moveAfter ?? null) : null,
      productId: step.productId,
      missed: step.missed ?? null,
      missedMin: step.missedMin ?? null,
      bayId: placed.bay,
      plannedAt: placed.start,
      plannedEndAt: placed.end,
      startAt: placed.start,
      endAt: placed.end,
      movedToBayId: placed.moved?.bay ?? null,
      movedAt: placed.moved?.at ?? null,
      crew: { create: crewRows(peopleOf(placed)) },
    }
  })
}

/** What a planned job promises: its drop-off and its handovers. */
export function timesOf(
  steps: readonly (Step & PlannedStep)[],
  plan: Plan,
  products: ProductsById,
  leaving: Leaving,
) {
  const placed = plan.steps.map((each, i) => ({
    kind: steps[i]!.kind,
    stage: steps[i]!.stage,
    productId: steps[i]!.productId,
    startAt: each.start,
    endAt: each.end,
    actualStartAt: null,
    actualEndAt: null,
  }))
  return {
    dropOffAt: plan.steps[0]!.start,
    plannedHandoverAt: plan.handover,
    handoverAt: plan.handover,
    ...leavingTimes(placed, products, leaving),
  }
}
