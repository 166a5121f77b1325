/** What the steps of booked jobs will draw: each treatment's recipe, laid against the job's own steps. */
import type { RecipeAmount } from '../../domain/shelf/index.ts'
import { shareOf, sizeClasses, type TreatmentStep } from '../../domain/shop/index.ts'
import { chainOf } from '../../domain/treatment/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'

/** What a treatment's step draws of one product, by size class, as it is kept with the step. */
export interface RecipeLine {
  readonly productId: string
  /** 0 where a size draws nothing of it. */
  readonly bySize: Readonly<Record<SizeClass, RecipeAmount>>
}

/** A treatment as far as its recipes go. */
export interface WithRecipes {
  readonly name: string
  readonly steps: readonly { readonly draws: unknown }[]
  /** Of the paint it is laid over; left out: all of it. */
  readonly share?: number
}

export interface ExpectedDraw {
  readonly position: number
  readonly productId: string
  readonly expectedCenti: number
  readonly sdCenti: number
}

interface ChainStep {
  readonly position: number
  readonly kind: string
  readonly stage: string
  readonly name: string
}

/** Steps that say the same work, whichever treatment they come from. */
export function workKey({ stage, name }: { stage: string; name: string }): string {
  return `${stage}\n${name.trim().toLowerCase()}`
}

/** The recipe lines kept with a treatment's step. */
export function recipeOf(step: { readonly draws: unknown }): RecipeLine[] {
  return (step.draws ?? []) as RecipeLine[]
}

/**
 * What each step of a job draws. The treatments are joined to a chain as a booking does it (a wash two of them share is
 * done, and drawn for, once), and the chain's steps are found again in the job by their stage and name, in order.
 * `found` names the steps of the job that are still in the treatments as now sold; the others keep what they had.
 */
export function expectedDraws(
  treatments: readonly WithRecipes[],
  steps: readonly ChainStep[],
  sizeClass: SizeClass,
): { draws: ExpectedDraw[]; found: number[] } {
  const chain = chainOf(
    treatments.map(({ name, steps }) => ({ name, steps: fromJson<TreatmentStep[]>(steps) })),
    step => step.minutes[sizeClass],
  )
  const queues = Map.groupBy(chain, link => workKey(link.template))
  const draws: ExpectedDraw[] = []
  const found: number[] = []
  for (const step of steps) {
    if (step.kind !== 'work') continue
    const link = queues.get(workKey(step))?.shift()
    if (!link) continue
    found.push(step.position)
    for (const { productId, bySize } of recipeOf(link.template as TreatmentStep & { draws: unknown })) {
      const { centi, sdCenti } = bySize[sizeClass]
      // Shared by several, it draws for the one that goes over most.
      const share = Math.max(...[...link.treatments].map(t => shareOf(step, treatments[t]?.share ?? 1)))
      const expectedCenti = Math.round(centi * share)
      if (expectedCenti > 0)
        draws.push({
          position: step.position,
          productId,
          expectedCenti,
          sdCenti: Math.round(sdCenti * share),
        })
    }
  }
  return { draws: summed(draws), found }
}

/** A step that names a product twice draws the sum; the spreads are independent. */
function summed(draws: readonly ExpectedDraw[]): ExpectedDraw[] {
  const byKey = Map.groupBy(draws, draw => `${draw.position} ${draw.productId}`)
  return [...byKey.values()].flatMap(same =>
    same.slice(0, 1).map(draw => ({
      ...draw,
      expectedCenti: same.reduce((sum, each) => sum + each.expectedCenti, 0),
      sdCenti: Math.round(Math.hypot(...same.map(each => each.sdCenti))),
    })),
  )
}

/** A step done longer ago than this is left as it was recorded. */
const stillOpenMin = 2 * 1440

/**
 * Writes what the steps of these jobs are expected to draw, in place of what was expected before. Steps already
 * confirmed, or done long ago, keep their lines.
 */
export async function writeStepDraws(tx: Tx, jobIds: readonly string[], nowAt: number): Promise<void> {
  if (jobIds.length === 0) return
  const jobs = await tx.job.findMany({
    where: { id: { in: [...jobIds] } },
    select: {
      id: true,
      vehicle: { select: { sizeClass: true } },
      treatments: {
        orderBy: { position: 'asc' },
        select: {
          share: true,
          treatment: { select: { name: true, steps: { orderBy: { position: 'asc' } } } },
        },
      },
      steps: {
        orderBy: { position: 'asc' },
        select: { position: true, kind: true, stage: true, name: true, actualEndAt: true },
      },
      draws: { where: { NOT: { confirmedAt: null } }, select: { position: true } },
    },
  })
  for (const job of jobs) {
    const treatments = job.treatments.map(({ treatment, share }) => ({ ...treatment, share }))
    const { draws, found } = expectedDraws(treatments, job.steps, job.vehicle.sizeClass as SizeClass)
    const kept = new Set(job.draws.map(draw => draw.position))
    for (const step of job.steps)
      if ((step.actualEndAt ?? nowAt) < nowAt - stillOpenMin) kept.add(step.position)
    const renewed = found.filter(position => !kept.has(position))
    await tx.stepDraw.deleteMany({ where: { jobId: job.id, position: { in: renewed } } })
    await tx.stepDraw.createMany({
      data: draws.filter(draw => renewed.includes(draw.position)).map(draw => ({ ...draw, jobId: job.id })),
    })
  }
}

/** Takes out what these jobs were expected to draw: their places were let go, and every look at the shelf would read it. */
export async function dropStepDraws(tx: Tx, jobIds: readonly string[]): Promise<void> {
  await tx.stepDraw.deleteMany({ where: { jobId: { in: [...jobIds] }, confirmedAt: null } })
}

/** The jobs still to be worked on that were sold one of these treatments. */
export async function openJobsWith(
  tx: Tx,
  treatmentIds: readonly string[],
  nowAt: number,
): Promise<string[]> {
  const jobs = await tx.job.findMany({
    where: {
      treatments: { some: { treatmentId: { in: [...treatmentIds] } } },
      OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: nowAt } }],
    },
    select: { id: true },
  })
  return jobs.map(job => job.id)
}

/**
 * The recipes for a treatment's new steps: each keeps that of the old step that is the same work, or, where it was
 * renamed, of the old step in its place.
 */
export function keptRecipes(
  before: readonly { stage: string; name: string; draws: unknown }[],
  after: readonly { stage: string; name: string }[],
): RecipeLine[][] {
  const queues = Map.groupBy(before, workKey)
  const same = after.map(step => queues.get(workKey(step))?.shift())
  const left = new Set([...queues.values()].flat())
  return same.map((found, i) => {
    const renamed = before[i]
    const from = found ?? (renamed && left.has(renamed) ? renamed : undefined)
    return from ? recipeOf(from) : []
  })
}

/** An amount for each size class. */
export function bySize<T>(of: (size: SizeClass) => T): Record<SizeClass, T> {
  return Object.fromEntries(sizeClasses.map(size => [size, of(size)])) as Record<SizeClass, T>
}
