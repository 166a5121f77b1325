import {
  type CoatWindow,
  type CureClockView,
  type CureProfile,
  clockView,
  coatWindow,
  type LaidCoat,
  type Leaving,
  leavingAge,
  milestones,
  plannedWindow,
  type WindowName,
} from '../cure/index.ts'
import type { ProductKind } from '../shop/index.ts'

/** A product as far as its cure is told. */
export interface CuringProduct {
  readonly id: string
  readonly name: string
  readonly kind: ProductKind
  readonly cureProfile: CureProfile | null
  /** What its safety data sheet asks of whoever is handed it; null: nobody has entered the sheet. */
  readonly caution: string | null
}

export type ProductsById = ReadonlyMap<string, CuringProduct>

/** What is needed of a step to find the coats of a job. */
export interface CoatStep {
  readonly kind: string
  readonly stage: string
  readonly productId: string | null
  readonly startAt: number
  readonly endAt: number
  readonly actualStartAt: number | null
  readonly actualEndAt: number | null
  readonly laid?: LaidCoat
  /** Done, it has taken off the coat before it. */
  readonly takesOff?: boolean
}

/** The steps without those whose coat was taken off again: it lies on the car no more. Their places stay theirs. */
export function stillOn<S extends CoatStep>(steps: readonly S[]): { step: S; index: number }[] {
  const all = steps.map((step, index) => ({ step, index }))
  const off = new Set<number>()
  for (const { step, index } of all)
    if (step.takesOff && step.actualEndAt !== null)
      off.add(
        all.findLast(
          each =>
            each.index < index &&
            !off.has(each.index) &&
            (each.step.stage === 'coat' || each.step.stage === 'topper') &&
            each.step.kind === 'work',
        )?.index ?? -1,
      )
  return all.filter(({ index }) => !off.has(index))
}

export interface Coat {
  /** Its place among the job's steps. */
  readonly index: number
  readonly product: CuringProduct & { readonly cureProfile: CureProfile }
  /** When it was begun and finished, or is to be. */
  readonly startAt: number
  readonly endAt: number
  /** How long the next layer takes, and the topper; 0 where none follows in this job. */
  readonly nextMin: Readonly<Record<WindowName, number>>
  readonly actual: boolean
  /** Its running clock, once it is laid. */
  readonly laid: LaidCoat | null
}

/** The coats and toppers of a job, in order. */
export function coatsOf(steps: readonly CoatStep[], products: ProductsById): Coat[] {
  return stillOn(steps).flatMap(({ step, index }) => {
    const product = step.kind === 'work' && step.productId ? products.get(step.productId) : undefined
    if (!product?.cureProfile) return []
    const { cureProfile } = product
    const later = steps.slice(index + 1).filter(over => over.kind === 'work')
    const minutesOf = (over: CoatStep | undefined) => (over ? endOf(over) - startOf(over) : 0)
    return [
      {
        index,
        product: { ...product, cureProfile },
        startAt: startOf(step),
        endAt: endOf(step),
        nextMin: {
          recoat: minutesOf(later.find(over => over.stage === 'coat' && over.productId === product.id)),
          topper: minutesOf(later.find(over => over.stage === 'topper')),
        },
        actual: step.actualEndAt !== null,
        laid: step.laid ?? null,
      },
    ]
  })
}

function startOf({ actualStartAt, startAt }: CoatStep): number {
  return actualStartAt ?? startAt
}

function endOf({ actualEndAt, endAt }: CoatStep): number {
  return actualEndAt ?? endAt
}

/** The moments of a coat's cure, as every screen is given them. Points in time are epoch minutes. */
export interface CureMarks {
  productName: string
  coatEndAt: number
  /** The coat is really laid: the times below are the running clock, not a plan. */
  actual: boolean
  /** Null while the coat is only planned. */
  clock: CureClockView | null
  tackFreeAt: number
  recoatOpensAt: number | null
  recoatClosesAt: number | null
  /** The earliest a topper may follow; null where the sheet names none, and on a topper itself. */
  topperAt: number | null
  topperAdvisedAt: number | null
  topperClosesAt: number | null
  safeAt: number
  advisedAt: number
  keepDryEndsAt: number
  firstWashAt: number
  fullCureAt: number
}

/** Where a clock never gets to in this cold: further away than anything that is planned. */
export const neverMin = 10 * 365 * 1440

/** Turns a cure age of the coat into the first whole minute it is reached, by its clock or else at the reference. */
function reacher({ endAt, laid }: Coat): (ageMin: number) => number {
  if (!laid) return ageMin => endAt + ageMin
  // Rounding noise of the sums must not make a whole minute the next one.
  return ageMin => Math.ceil((laid.clock.reachedAt(ageMin) ?? endAt + neverMin) - 1e-6)
}

/** When what goes over the coat may be begun, so that every panel keeps its window; null: the sheet names none. */
function windowOf({ product, laid, startAt, endAt, nextMin }: Coat, name: WindowName): CoatWindow | null {
  if (laid) return coatWindow(laid, name, nextMin[name])
  return plannedWindow(product.cureProfile, name, { fromAt: startAt, toAt: endAt }, nextMin[name])
}

/**
 * The moments of one coat's cure: by its running clock once it is laid, until then as its profile gives them.
 * @param leaving whether the car stays until it may get wet: what it may leave from.
 */
export function marksOf(coat: Coat, leaving: Leaving): CureMarks {
  const { product, endAt, actual, laid } = coat
  const reached = reacher(coat)
  const at = milestones(product.cureProfile, endAt, reached)
  const safeAt = reached(leavingAge(product.cureProfile, leaving))
  const advisedAt = reached(leavingAge(product.cureProfile, leaving, 'advised'))
  const recoat = windowOf(coat, 'recoat')
  const topper = product.kind === 'topper' ? null : windowOf(coat, 'topper')
  const never = endAt + neverMin
  return {
    productName: product.name,
    coatEndAt: endAt,
    actual,
    clock: laid && clockView(laid, safeAt, advisedAt),
    tackFreeAt: at.tackFreeAt,
    recoatOpensAt: recoat && (recoat.opensAt ?? never),
    recoatClosesAt: recoat === null ? null : recoat.closesAt,
    topperAt: topper && (topper.opensAt ?? never),
    topperAdvisedAt: topper && at.topperAdvisedAt,
    topperClosesAt: topper === null ? null : topper.closesAt,
    safeAt,
    advisedAt,
    keepDryEndsAt: at.keepDryEndsAt,
    firstWashAt: at.firstWashAt,
    fullCureAt: at.fullCureLateAt,
  }
}

/** The coat whose cure a hold is: the last one laid before it, of the hold's own product where there is one. */
export function coatOfHold(coats: readonly Coat[], index: number, productId: string | null): Coat | null {
  const before = coats.filter(coat => coat.index < index)
  return before.findLast(coat => coat.product.id === productId) ?? before.at(-1) ?? null
}

/**
 * The earliest the profiles let the car leave, and when they advise it: every coat counts from its own end. A car that
 * does not leave under cover stays until it may get wet. A job without coats may leave when its last step is done.
 */
export function leavingTimes(
  steps: readonly CoatStep[],
  products: ProductsById,
  leaving: Leaving,
): { safeAt: number; advisedAt: number } {
  const done = Math.max(
    0,
    ...steps.filter(step => step.kind === 'work').map(step => step.actualEndAt ?? step.endAt),
  )
  let [safeAt, advisedAt] = [done, done]
  for (const coat of coatsOf(steps, products)) {
    const { cureProfile } = coat.product
    const reached = reacher(coat)
    safeAt = Math.max(safeAt, reached(leavingAge(cureProfile, leaving)))
    advisedAt = Math.max(advisedAt, reached(leavingAge(cureProfile, leaving, 'advised')))
  }
  return { safeAt, advisedAt }
}

/** The cure profiles of those products that cure, by product id. */
export function profilesIn(products: ProductsById): Record<string, CureProfile> {
  const profiles: Record<string, CureProfile> = {}
  for (const { id, cureProfile } of products.values()) if (cureProfile) profiles[id] = cureProfile
  return profiles
}
