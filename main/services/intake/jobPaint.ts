/** A visit with everything its intake asks of it, and what its paint forbids of what was sold. */

import { dateOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { carThickness, type MeasureRules, type ThicknessUnits } from '../../domain/measure/index.ts'
import {
  type Breach,
  breachesOf,
  type PaintStep,
  type PanelState,
  splitOf,
} from '../../domain/paint/index.ts'
import { found } from '../../domain/refusal.ts'
import {
  type Finish,
  type PanelName,
  type PanelNoted,
  type ProductKind,
  panelOn,
  panelsOver,
  type Scope,
  type Stage,
} from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { IntakeDraft } from './inputs.ts'

const steps = {
  orderBy: { position: 'asc' },
  select: { name: true, stage: true, product: { select: { kind: true } } },
} as const

const withAll = {
  customer: true,
  vehicle: true,
  photos: { orderBy: { at: 'asc' } },
  afterWork: true,
  decisions: { orderBy: { at: 'asc' } },
  treatments: { orderBy: { position: 'asc' }, include: { treatment: { include: { steps } } } },
  intake: { include: { entries: { orderBy: { number: 'asc' } } } },
} as const

export type IntakeJob = Awaited<ReturnType<typeof intakeJob>>

/** The visit. @throws Refusal `missing`. */
export async function intakeJob(tx: Tx, jobId: string) {
  const job = await tx.job.findUnique({ where: { id: jobId }, include: withAll })
  return found(job, { jobId }, say('This job is not there; look at the board again.'))
}

/** What was measured and noted last: signed, or still open; null: nothing yet. */
export function lastDraft({ intake }: IntakeJob): IntakeDraft | null {
  const signed = intake?.entries.at(-1)
  if (signed) return fromJson<{ draft: IntakeDraft }>(signed.content).draft
  return intake ? fromJson<IntakeDraft>(intake.draft) : null
}

export interface ForbiddenView extends Breach {
  treatment: string
  /** What the treatment would go on without these panels. */
  on: readonly PanelName[]
}

export function paintSteps(job: IntakeJob): PaintStep[] {
  return job.treatments.flatMap(({ treatment }) => stepsOf(treatment.steps))
}

const stepsOf = (rows: IntakeJob['treatments'][number]['treatment']['steps']): PaintStep[] =>
  rows.map(({ name, stage, product }) => ({
    name,
    stage: stage as Stage,
    productKind: (product?.kind ?? null) as ProductKind | null,
  }))

/** What the paint forbids of what was sold, treatment by treatment, without what was decided already. */
export function forbidden(
  job: IntakeJob,
  nowAt: number,
  { zone, units, rules }: { zone: string; units: ThicknessUnits; rules: MeasureRules },
): ForbiddenView[] {
  const draft = lastDraft(job)
  const thin = new Map(
    carThickness(draft?.thickness ?? [], rules.thickness).panels.flatMap(each =>
      each.belowFloor ? [[each.panel, each.leastUm] as const] : [],
    ),
  )
  const car = {
    finish: job.vehicle.finish as Finish,
    panels: fromJson<PanelNoted[] | null>(job.vehicle.panels) ?? [],
    today: dateOf(nowAt, zone),
  }
  return job.treatments.flatMap(sold => {
    const states = panelsOver(sold.scope as Scope, sold.leftOut).map(
      (panel): PanelState => ({
        panel,
        ...panelOn(panel, car),
        thinUm: thin.get(panel) ?? null,
        waxed: draft?.wax === 'waxed',
      }),
    )
    const done = job.decisions.filter(
      ({ treatment, decision }) => treatment === sold.name && decision === 'do it',
    )
    const open = breachesOf(stepsOf(sold.treatment.steps), states, units).flatMap(breach => {
      const decided = done
        .filter(({ rule }) => rule === breach.rule)
        .flatMap(({ panels }) => fromJson<PanelName[]>(panels))
      // A panel that came later, such as one measured since, is asked about again.
      return breach.panels.every(panel => decided.includes(panel)) ? [] : [breach]
    })
    return open.map(breach => ({ ...breach, treatment: sold.name, on: splitOf(states, [breach]).on }))
  })
}
