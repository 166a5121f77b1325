import { clockMilestones, layeredCoat } from '../../domain/cure/index.ts'
import type { ProductsById } from '../floor/cureMarks.ts'
import type { FloorStep } from '../floor/floorJobs.ts'
import type { JobRow } from '../floor/jobRows.ts'
import type { JobLayerView } from './jobCureViews.ts'

/** The coats and toppers of a job in order, each with the window the coat beneath it leaves, and whether it was met. */
export function layerViews(
  job: JobRow,
  products: ProductsById,
  conditions: ReadonlyMap<number, string>,
  nowAt: number,
): JobLayerView[] {
  const coats = job.steps.filter(
    step =>
      step.kind === 'work' &&
      (step.stage === 'coat' || step.stage === 'topper') &&
      hasProfile(step, products),
  )
  return coats.map((step, i): JobLayerView => {
    const beneath = coats.slice(0, i).findLast(other => isBeneath(other, step)) ?? null
    return {
      position: step.position,
      name: step.name,
      productName: products.get(step.productId!)!.name,
      startAt: step.actualStartAt ?? step.startAt,
      endAt: step.actualEndAt ?? step.endAt,
      laid: step.actualEndAt !== null,
      ...windowOver(beneath, step, nowAt),
      conditions: conditions.get(step.position) ?? null,
    }
  })
}

function hasProfile(step: FloorStep, products: ProductsById): boolean {
  return step.productId !== null && products.get(step.productId)?.cureProfile != null
}

/** A layer goes on one of its own product, a topper on any coat. */
function isBeneath(other: FloorStep, step: FloorStep): boolean {
  return other.stage === 'coat' && (step.stage === 'topper' || other.productId === step.productId)
}

function windowOver(
  beneath: FloorStep | null,
  step: FloorStep,
  nowAt: number,
): Pick<JobLayerView, 'window' | 'verdict' | 'asks'> {
  if (!beneath) return { window: null, verdict: null, asks: null }
  if (!beneath.laid) return { window: null, verdict: 'no window given', asks: null }
  const { profile, clock } = beneath.laid
  const begun = step.actualStartAt
  if (step.stage === 'topper') {
    const { topperOpens, topperCloses } = clockMilestones(profile, clock)
    if (!topperOpens) return { window: null, verdict: 'no window given', asks: null }
    const window = { opensAt: topperOpens.at, closesAt: topperCloses?.at ?? null }
    const at = begun ?? Math.max(nowAt, topperOpens.at)
    const late = window.closesAt !== null && at > window.closesAt
    const verdict = late ? 'too late' : at < window.opensAt ? 'too early' : 'met'
    // The words of the profile are about a further layer; of a topper it gives only the figure.
    const asks = late ? 'The topper’s window has closed: ask the maker before it goes on.' : null
    return { window, verdict, asks }
  }
  const opensAt = clockMilestones(profile, clock).recoatOpens?.at ?? 0
  // A layer not begun is asked of as if it were begun now, or when its window opens.
  const startAt = begun ?? Math.max(nowAt, opensAt)
  const { findings } = layeredCoat([
    { profile, startAt: beneath.actualStartAt ?? clock.coatEndAt, clock },
    { profile, startAt, clock: step.laid?.clock ?? clock },
  ])
  const finding = findings[0]!
  return {
    window: finding.opensAt === null ? null : { opensAt: finding.opensAt, closesAt: finding.closesAt },
    verdict: finding.verdict,
    asks: finding.asks,
  }
}
