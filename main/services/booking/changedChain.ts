/** The chain of a booking that changes: as it was sold, or laid out anew where the work is other. */
import { leavingOf, stepOf } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type {
  Condition,
  Finish,
  LentKind,
  PanelNoted,
  Scope,
  SizeClass,
  Stage,
} from '../../domain/shop/index.ts'
import type { LaidStep } from '../../domain/treatment/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { assertCan } from '../job/assertCan.ts'
import { productsById, type Sold, sell } from '../setUp/soldTreatments.ts'
import type { ChangeInput } from './inputs.ts'

/** What of a booking may be other than it was sold. */
export type OtherWork = Pick<ChangeInput, 'treatmentIds' | 'condition' | 'scope' | 'sizeClass'>

export interface ChangedChain extends Pick<Sold, 'steps' | 'products' | 'leaving'> {
  readonly job: JobRow
  readonly work: { treatmentIds: string[]; condition: Condition; scope: Scope; sizeClass: SizeClass }
  /** What is sold now; null: what was sold, and at its price. */
  readonly sold: Sold | null
  /** What it borrows. */
  readonly lends: LentKind[]
}

/** The job with its chain as it would be. @throws Refusal where it is over, or its work has begun. */
export async function changedChain(
  tx: Tx,
  floor: Floor,
  id: string,
  other: OtherWork,
): Promise<ChangedChain> {
  const [row] = await jobRows(tx, floor, { id })
  const job = found(row, { id }, say('This job is not there; look at the board again.'))
  assertCan(job, 'rebook')
  const begun = job.steps.find(step => step.actualStartAt !== null)
  if (begun)
    refuse(
      'begun',
      { id },
      say(
        '"{name}" has begun: what is sold stays. Say which step takes longer, or book the rest as a job of its own.',
        {
          name: begun.name,
        },
      ),
    )
  const [first] = job.treatments
  const was = {
    treatmentIds: job.treatments.map(each => each.treatmentId),
    condition: job.condition as Condition,
    scope: (first?.scope ?? 'whole') as Scope,
    sizeClass: job.vehicle.sizeClass as SizeClass,
  }
  const {
    treatmentIds = was.treatmentIds,
    condition = was.condition,
    scope = was.scope,
    sizeClass = was.sizeClass,
  } = other
  const work = { treatmentIds, condition, scope, sizeClass }
  const lends = job.loans.map(({ lendable }) => lendable.kind as LentKind)
  if (sameWork(work, was)) {
    const products = await productsById(
      tx,
      job.steps.flatMap(step => step.productId ?? []),
    )
    return { job, work, sold: null, lends, steps: job.steps.map(asLaid), products, leaving: leavingOf(job) }
  }
  const sold = await sell(tx, {
    treatmentIds,
    condition,
    sizeClass,
    finish: job.vehicle.finish as Finish,
    coveredBy: job.coveredBy ?? undefined,
    over: { panels: fromJson<PanelNoted[] | null>(job.vehicle.panels) ?? [], scope, nowAt: floor.nowAt },
  })
  return { job, work, sold, lends, steps: sold.steps, products: sold.products, leaving: sold.leaving }
}

function sameWork(a: ChangedChain['work'], b: ChangedChain['work']): boolean {
  const keyOf = ({ treatmentIds, condition, scope, sizeClass }: ChangedChain['work']) =>
    JSON.stringify([[...new Set(treatmentIds)].sort(), condition, scope, sizeClass])
  return keyOf(a) === keyOf(b)
}

/** A step as it was booked, for the scheduler. */
function asLaid(row: JobRow['steps'][number]): LaidStep {
  return {
    ...stepOf(row),
    name: row.name,
    stage: row.stage as Stage,
    needs: row.needs,
    productId: row.productId,
  }
}
