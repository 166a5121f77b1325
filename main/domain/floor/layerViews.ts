import { coatWindow, ruleOf, type WindowName, type WindowVerdict, windowVerdict } from '../cure/index.ts'
import { say } from '../language/index.ts'
import type { UnitSystem } from '../measure/index.ts'
import { type ProductsById, stillOn } from './cureMarks.ts'
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
  window: { opensAt: number | null; closesAt: number | null } | null
  /** The rule behind each end of the window, in words. */
  why: string[]
  /** Null: nothing lies beneath it. */
  verdict: WindowVerdict | 'no window given' | null
  /** What the profile of the coat beneath asks now that its window was missed. */
  asks: string | null
  /** The kept check of the conditions it was begun in, in words. */
  conditions: string | null
  /** What its early cure did not meet of humidity and dew point, in words; it moves no time. */
  air: string[]
}

/** What was noted of a layer's air, by the position of its step. */
export interface LayerNotes {
  readonly conditions: ReadonlyMap<number, string>
  readonly air: ReadonlyMap<number, string[]>
}

/** The coats and toppers of a job in order, each with the window the coat beneath it leaves, and whether it was met. */
export function layerViews(
  steps: readonly FloorStep[],
  products: ProductsById,
  { conditions, air }: LayerNotes,
  nowAt: number,
  units: UnitSystem,
): JobLayerView[] {
  const coats: FloorStep[] = []
  return stillOn(steps).flatMap(({ step }): JobLayerView[] => {
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
      ...windowOver(beneath, step, nowAt, units),
      conditions: conditions.get(step.position) ?? null,
      air: air.get(step.position) ?? [],
    }
    return [layer]
  })
}

/** A layer goes on one of its own product, a topper on any coat. */
function isBeneath(other: FloorStep, step: FloorStep): boolean {
  return other.stage === 'coat' && (step.stage === 'topper' || other.productId === step.productId)
}

type Over = Pick<JobLayerView, 'window' | 'why' | 'verdict' | 'asks'>

function windowOver(beneath: FloorStep | null, step: FloorStep, nowAt: number, units: UnitSystem): Over {
  const none = { window: null, why: [], asks: null }
  if (!beneath) return { ...none, verdict: null }
  if (!beneath.laid) return { ...none, verdict: 'no window given' }
  const { profile } = beneath.laid
  const name: WindowName = step.stage === 'topper' ? 'topper' : 'recoat'
  const window = coatWindow(
    beneath.laid,
    name,
    (step.actualEndAt ?? step.endAt) - (step.actualStartAt ?? step.startAt),
  )
  if (!window) return { ...none, verdict: 'no window given' }
  // A layer not begun is asked of as if it were begun now, or when its window opens.
  const verdict = windowVerdict(window, step.actualStartAt ?? Math.max(nowAt, window.opensAt ?? nowAt))
  const asked = {
    recoat: profile.missedRecoat,
    topper: say('The topper’s window has closed: ask the maker before it goes on.'),
  }
  return {
    window,
    why: [ruleOf(profile, `${name}Opens`, units), ruleOf(profile, `${name}Closes`, units)].flatMap(
      rule => rule?.words ?? [],
    ),
    verdict,
    // Too early is a fault of the lower coat too, which only its own sheet has words for.
    asks: verdict === 'met' || (name === 'topper' && verdict === 'too early') ? null : asked[name],
  }
}
