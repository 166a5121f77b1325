/** A job's steps as the board draws them: stays bay by bay, each filled with blocks from its start to its end. */
import type { Leaving } from '../cure/index.ts'
import type { Stay } from '../schedule/index.ts'
import { type CureMarks, coatOfHold, coatsOf, marksOf, type ProductsById } from './cureMarks.ts'
import { type FloorStep, jobStays } from './floorJobs.ts'

type Timed = 'bayId' | 'startAt' | 'endAt' | 'actualStartAt' | 'actualEndAt' | 'movedToBayId' | 'movedAt'

export interface BlockStep
  extends Pick<FloorStep, Timed | 'position' | 'kind' | 'name' | 'stage' | 'productId' | 'laid'> {
  /** Names. */
  readonly crew: string[]
}

export interface BlockJob {
  readonly steps: readonly BlockStep[]
  /** Until when it holds its last bay. */
  readonly leavesAt: number
  readonly leaving: Leaving
}

export interface BlockView {
  /** The step's position in its job; for a wait, that of the step before it. */
  position: number
  kind: 'work' | 'hold' | 'wait'
  name: string
  /** prepare, correct, wipe, coat, topper, finish; empty for a wait. */
  stage: string
  fromAt: number
  toAt: number
  /** Names. */
  crew: string[]
  state: 'planned' | 'running' | 'done'
  productId: string | null
  /** For a hold after a coat or topper, and for the wait that follows it. */
  cure: CureMarks | null
}

export interface FilledStay extends Stay {
  /** The first step that starts in it; null: none does. */
  readonly position: number | null
  readonly blocks: BlockView[]
}

type StateStep = Pick<BlockStep, 'kind' | 'startAt' | 'endAt' | 'actualStartAt' | 'actualEndAt'>

/** Done, running or planned; a hold begins and ends by itself once the work `before` it is done. */
export function stateOf(step: StateStep, before: readonly StateStep[], nowAt: number): BlockView['state'] {
  if (step.kind === 'work')
    return step.actualEndAt !== null ? 'done' : step.actualStartAt !== null ? 'running' : 'planned'
  const laid = before.every(each => each.kind === 'hold' || each.actualEndAt !== null)
  if (!laid || step.startAt > nowAt) return 'planned'
  return step.endAt > nowAt ? 'running' : 'done'
}

/** The stays of a job, each filled without gaps: its steps, and waits where nothing happens. */
export function filledStays(job: BlockJob, products: ProductsById, nowAt: number): FilledStay[] {
  const coats = coatsOf(job.steps, products)
  const cures = job.steps.map((step, i) => {
    const coat = step.kind === 'hold' ? coatOfHold(coats, i, step.productId) : null
    return coat && marksOf(coat, job.leaving)
  })
  return jobStays({ ...job, handoverAt: job.leavesAt }).map(stay => {
    const blocks: BlockView[] = []
    let at = stay.from
    let position: number | null = null
    const fill = (toAt: number, before: number) => {
      const step = job.steps[Math.max(0, before)]
      if (toAt <= at || !step) return
      const coat = coatOfHold(coats, before + 1, step.productId)
      blocks.push({
        position: step.position,
        kind: 'wait',
        name: 'Waits',
        stage: '',
        fromAt: at,
        toAt,
        crew: [],
        state: toAt <= nowAt ? 'done' : 'planned',
        productId: coat?.product.id ?? null,
        cure: coat && marksOf(coat, job.leaving),
      })
      at = toAt
    }
    job.steps.forEach((step, i) => {
      const fromAt = Math.max(step.startAt, stay.from)
      const toAt = Math.min(step.endAt, stay.to)
      const here = bayAt(step, fromAt) === stay.bay
      if (!here || fromAt >= toAt) return
      fill(fromAt, i - 1)
      if (step.startAt >= stay.from) position ??= step.position
      blocks.push({
        position: step.position,
        kind: step.kind as 'work' | 'hold',
        name: step.name,
        stage: step.stage,
        fromAt,
        toAt,
        crew: step.crew,
        state: stateOf(step, job.steps.slice(0, i), nowAt),
        productId: step.productId,
        cure: cures[i] ?? null,
      })
      at = toAt
    })
    const last = job.steps.findLastIndex(step => step.startAt < stay.to)
    fill(stay.to, last)
    return { ...stay, position, blocks }
  })
}

/** The bay a step's car stands in at a minute of it. */
function bayAt(step: BlockStep, at: number): string {
  return step.movedToBayId !== null && step.movedAt !== null && at >= step.movedAt
    ? step.movedToBayId
    : step.bayId
}
