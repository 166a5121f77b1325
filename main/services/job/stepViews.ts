/** A job's steps as its page lists them. */
import {
  coatOfHold,
  coatsOf,
  leavingOf,
  marksOf,
  type ProductsById,
  presenceOf,
  stateOf,
} from '../../domain/floor/index.ts'
import { can, lastRecorded, notYet } from '../../domain/job/index.ts'
import type { Skill, Stage } from '../../domain/shop/index.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'

/** A step that passed from one person to another while it ran. */
interface StepPass {
  readonly position: number
  readonly fromCrewId: string
  readonly at: number
}

/** Each step with who does it, how far it is, and what may be done with it. */
export function stepViews(
  job: JobRow,
  floor: Floor,
  products: ProductsById,
  { uses, passes }: { uses: ReadonlyMap<number, string[]>; passes: readonly StepPass[] },
) {
  const { steps } = job
  const here = can(job, 'work')
  const coats = coatsOf(steps, products)
  return steps.map((step, i) => {
    const coat = step.kind === 'hold' ? coatOfHold(coats, i, step.productId) : null
    return {
      position: step.position,
      kind: step.kind as 'work' | 'hold',
      name: step.name,
      stage: step.stage as Stage,
      minutes: step.minutes,
      bayId: step.bayId,
      bayName: floor.bayNames.get(step.bayId) ?? '',
      startAt: step.startAt,
      endAt: step.endAt,
      actualStartAt: step.actualStartAt,
      actualEndAt: step.actualEndAt,
      state: stateOf(step, job.steps.slice(0, i), floor.nowAt),
      crew: presenceOf(floor.open, step).map(({ id, ...there }) => ({
        id,
        name: floor.crewNames.get(id) ?? '',
        /** When, where it is for a part of the step alone. */
        helps: step.helperIds?.includes(id) ? there : null,
      })),
      /** Who worked on it before, each until when. */
      passes: passes
        .filter(({ position }) => position === step.position)
        .map(({ fromCrewId, at }) => ({ name: floor.crewNames.get(fromCrewId) ?? '', untilAt: at })),
      skill: step.skill as Skill | null,
      productId: step.productId,
      productName: step.productId === null ? null : (products.get(step.productId)?.name ?? null),
      moved:
        step.movedToBayId === null || step.movedAt === null
          ? null
          : {
              bayId: step.movedToBayId,
              bayName: floor.bayNames.get(step.movedToBayId) ?? '',
              at: step.movedAt,
            },
      /** What it is to draw from the shelf by its recipe, in words; what is confirmed is not among it. */
      uses: uses.get(step.position) ?? [],
      /** On a hold: the clock of the coat it follows. */
      cure: coat && marksOf(coat, leavingOf(job)),
      /** Holds start and finish by themselves. */
      can: {
        start: here && step.kind === 'work' && notYet(steps, i, floor.nowAt) === null,
        finish: here && step.actualStartAt !== null && step.actualEndAt === null,
        reopen: here && i === lastRecorded(steps),
        give:
          can(job, 'move') && step.kind === 'work' && step.actualEndAt === null && step.crewIds.length > 0,
      },
    }
  })
}
