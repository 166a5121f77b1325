import { clockMilestones, layeredCoat, type WindowVerdict } from '../cure/index.ts'
import type { ProductsById } from './cureMarks.ts'
import type { FloorStep } from './floorJobs.ts'

export interface JobLayerView {
  position: number
  name: string
  productName: string
  /** As it was, or as it is planned. */
  startAt: number
  endAt: number
  laid: boolean
  /** The window the coat beneath leaves for this one; null where it is the first, or the profile names none. */
  window: { opensAt: number; closesAt: number | null } | null
  /** Null: nothing lies beneath it. */
  verdict: WindowVerdict | null
  /** What the profile of the coat beneath asks now that its window was missed. */
  asks: string | null
  /** The kept check of the conditions it was begun in, in words. */
  conditions: string | null
}

/** The coats and toppers of a job in order, each with the window the coat beneath it leaves, and whether it was met. */
export function layerViews(
  steps: readonly FloorStep[],
  products: ProductsById,
  conditions: ReadonlyMap<number, string>,
  nowAt: number,
): JobLayerView[] {
  const coats: FloorStep[] = []
  return steps.flatMap((step): JobLayerView[] => {
    const product = products.get(step.productId ?? '')
    if (step.kind !== 'work' || (step.stage !== 'coat' && step.stage !== 'topper')) return []
    if (!product?.cureProfile) return []
    const beneath = coats.findLast(other => isBeneath(other, step)) ?? null
    coats.push(step)
    const layer = {
      position: step.position,
      name: step.name,
      productName: product.name,
      startAt: step.actualStartAt ?? step.startAt,
      endAt: step.actualEndAt ?? step.endAt,
      laid: step.actualEndAt !== null,
      ...windowOver(beneath, step, nowAt),
      conditions: conditions.get(step.position) ?? null,
    }
    return [layer]
  })
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
  const none = { window: null, verdict: 'no window given', asks: null } as const
  if (!beneath.laid) return none
  const { profile, clock } = beneath.laid
  const begun = step.actualStartAt
  if (step.stage === 'topper') {
    const { topperOpens, topperCloses } = clockMilestones(profile, clock)
    if (!topperOpens) return none
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
  const [finding] = findings
  if (!finding) return none
  return {
    window: finding.opensAt === null ? null : { opensAt: finding.opensAt, closesAt: finding.closesAt },
    verdict: finding.verdict,
    asks: finding.asks,
  }
}
