/** What a handover begins and answers: the layers that were laid, the plans that follow, the visits it was. */

import { dateOf } from '../../domain/calendar/index.ts'
import { type CoatStep, coatsOf, marksOf, type ProductsById, stillOn } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { type Plan, startingPlans } from '../../domain/upkeep/index.ts'
import type { AuditEntry, Tx } from '../../store/store.ts'
import { exposureOf, scaled } from './exposure.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import { productLives } from './productLives.ts'
import { upkeepRules } from './settings.ts'
import { answeredOf } from './workedOut.ts'

export interface HandedOver {
  readonly jobId: string
  readonly vehicleId: string
  readonly steps: readonly (CoatStep & { readonly stage: string })[]
  readonly products: ProductsById
  readonly at: number
  readonly zone: string
  readonly who: string
}

interface Laid {
  readonly stage: 'coat' | 'topper'
  readonly productId: string
  readonly laidOn: string
}

/**
 * Saved with the handover or not at all. A coating begins the car's plans anew; a topper alone is the renewal done;
 * visits that were booked as this job are done.
 */
export async function upkeepAfterHandover(
  tx: Tx,
  audit: (entry: AuditEntry) => void,
  job: HandedOver,
): Promise<void> {
  const laid = laidBy(job)
  if (laid.length > 0)
    await tx.layer.createMany({
      data: laid.map(each => ({ ...each, vehicleId: job.vehicleId, jobId: job.jobId })),
    })
  const kept = await keptPlans(tx, { vehicleId: job.vehicleId })
  await closeVisits(tx, job, kept, laid)
  const top = laid.findLast(each => each.stage === 'topper') ?? laid.at(-1)
  if (!top) return
  const coated = laid.some(each => each.stage === 'coat')
  const standing = kept.find(each => each.plan.kind === 'topper')
  if (!coated && standing?.row.productId === top.productId) return
  const retired = kept.filter(({ plan }) => (coated ? plan.kind !== 'other' : plan.kind === 'topper'))
  await tx.upkeepPlan.updateMany({
    where: { id: { in: retired.map(each => each.row.id) } },
    data: { archivedAt: job.at, version: { increment: 1 } },
  })
  const plans = (await newPlans(tx, job, top.productId)).filter(
    plan =>
      coated ||
      plan.kind === 'topper' ||
      (plan.kind === 'inspection' && !kept.some(each => each.plan.kind === 'inspection')),
  )
  await tx.upkeepPlan.createMany({ data: plans.map(plan => planRow(plan, job, top.productId, coated)) })
  audit({
    act: 'upkeep begun',
    entity: 'vehicle',
    entityId: job.vehicleId,
    detail: { plans: plans.map(plan => plan.title), jobId: job.jobId, retired: retired.length },
  })
}

/** The layers of a job that were really laid, each product once. */
function laidBy({ steps, zone }: HandedOver): Laid[] {
  const laid = new Map<string, Laid>()
  for (const { step } of stillOn(steps)) {
    const { stage, productId, actualEndAt } = step
    if ((stage === 'coat' || stage === 'topper') && productId !== null && actualEndAt !== null)
      laid.set(`${stage} ${productId}`, { stage, productId, laidOn: dateOf(actualEndAt, zone) })
  }
  return [...laid.values()]
}

/** Visits booked as this job are done; so is the topper's when a topper was laid. */
async function closeVisits(tx: Tx, job: HandedOver, kept: readonly KeptVisitPlan[], laid: readonly Laid[]) {
  const onDay = dateOf(job.at, job.zone)
  const topped = laid.some(each => each.stage === 'topper')
  for (const each of kept) {
    const { plan, row, booked } = each
    const bookedAs = [...booked].find(([, jobId]) => jobId === job.jobId)?.[0]
    if (bookedAs === undefined && !(topped && plan.kind === 'topper')) continue
    await tx.upkeepEntry.create({
      data: {
        actId: crypto.randomUUID(),
        vehicleId: job.vehicleId,
        planId: row.id,
        what: 'done',
        ruleOn: bookedAs ?? answeredOf(each, onDay, job.zone),
        onDay,
        jobId: job.jobId,
        at: job.at,
        who: job.who,
      },
    })
  }
}

async function newPlans(tx: Tx, job: HandedOver, productId: string): Promise<Plan[]> {
  const rules = await upkeepRules(tx)
  const life = (await productLives(tx)).get(productId)
  const { choices } = await exposureOf(tx, job.vehicleId)
  const washAt = Math.max(
    job.at,
    ...coatsOf(job.steps, job.products).map(coat => marksOf(coat, 'dry').firstWashAt),
  )
  return startingPlans(
    {
      handoverOn: dateOf(job.at, job.zone),
      // The day after the profile's moment: a visit on the day itself could be hours too early.
      firstWashDays: Math.max(1, Math.ceil((washAt - job.at) / 1440)),
      checkUpDays: rules.checkUpDays,
      topperDays: scaled(life?.intervalDays ?? 365, choices, rules).days,
    },
    kind => `${job.jobId}.${kind}`,
  )
}

/** A plan's columns; what went on it is named where the plan renews it. */
export function planRow(
  plan: Plan,
  job: Pick<HandedOver, 'vehicleId' | 'at'> & { readonly jobId: string | null },
  productId: string | null,
  coated: boolean,
) {
  const { anchor, earlyDays, lateDays, kind, title, rule, id } = plan
  return {
    id,
    vehicleId: job.vehicleId,
    kind,
    title,
    rule,
    anchorTo: anchor.to,
    anchorOn: anchor.to === 'date' ? anchor.on : anchor.since,
    anchorEvent: anchor.to === 'date' ? '' : coated ? anchor.event : say('the topper'),
    earlyDays,
    lateDays,
    productId: kind === 'topper' ? productId : null,
    jobId: job.jobId,
    createdAt: job.at,
  }
}
