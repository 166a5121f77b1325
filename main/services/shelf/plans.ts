/** Order points and sizes: worked out from the ledger once a week and kept between, because they change slowly. */
import { dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import {
  expectedUnforeseen,
  type PlannedProduct,
  type Plans,
  type Policy,
  planSupplier,
} from '../../domain/shelf/index.ts'
import { type JsonObject, noJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { Outlook } from './outlooks.ts'
import type { ShopDays } from './shopDays.ts'
import type { Buying } from './underWay.ts'

export interface PlanTerms {
  readonly today: number
  readonly days: ShopDays
  readonly holdRatePerYear: number
  readonly lineCostMinor: number
  /** All products are there: only then do those of one supplier know of each other, and the plans are worth keeping. */
  readonly whole: boolean
}

/** Days a plan is good for. */
const goodForDays = 7

/**
 * The plans of these products. Those that lack, or rest on other prices or another service level, are worked out now;
 * of those merely a week old, one supplier's are followed up each time, so that no opening of the screen waits for all.
 */
export async function plansFor(
  desk: Desk,
  tx: Tx,
  ground: PlanTerms,
  buyings: readonly Buying[],
  outlooks: ReadonlyMap<string, Outlook>,
): Promise<Map<string, Policy | null>> {
  const kept = new Map((await tx.shelfPlan.findMany()).map(row => [row.productId, row]))
  const plans = new Map<string, Policy | null>()
  const wanted = new Set<string>()
  const old = new Map<string, number>()
  for (const buying of buyings) {
    const row = kept.get(buying.productId)
    // One that is out of date still gives the pace to start from.
    if (row) plans.set(buying.productId, policyFrom(row.policy))
    const outlook = outlooks.get(buying.productId)
    if (row?.basis !== basisOf(buying, ground) || outgrown(plans.get(buying.productId), outlook)) {
      wanted.add(buying.supplier.id)
      continue
    }
    const age = ground.today - dayNumber(row.plannedOn)
    if (age >= goodForDays || age < 0)
      old.set(buying.supplier.id, Math.max(age, old.get(buying.supplier.id) ?? 0))
  }
  const [oldest] = [...old].sort((a, b) => b[1] - a[1])
  if (wanted.size === 0 && oldest) wanted.add(oldest[0])
  if (wanted.size === 0) return plans
  const fresh = new Map<string, Policy | null>()
  for (const supplierId of wanted) {
    const own = buyings.filter(buying => buying.supplier.id === supplierId)
    for (const [id, policy] of planOne(own, ground, outlooks, plans)) fresh.set(id, policy)
  }
  if (ground.whole) await keep(desk, ground, buyings, fresh)
  return new Map([...plans, ...fresh])
}

/** The use to expect must not have changed by more than this since a plan was made (common practice, no source). */
const mostChange = 1.5

/**
 * Whether use has moved away from what a plan was made for. The projection follows use at once; an advice by last week's
 * plan would contradict it.
 */
function outgrown(plan: Policy | null | undefined, outlook: Outlook | undefined): boolean {
  if (plan === undefined || !outlook) return false
  const then = plan?.expectedUnforeseenCenti ?? 0
  const now = expectedUnforeseen(outlook.demand, outlook.cover)
  // Within a single step of the lattice a change says nothing.
  return (
    Math.abs(now - then) > outlook.demand.stepCenti && (now > then * mostChange || then > now * mostChange)
  )
}

function planOne(
  own: readonly Buying[],
  ground: PlanTerms,
  outlooks: ReadonlyMap<string, Outlook>,
  previous: Plans,
): Map<string, Policy | null> {
  const supplier = own[0]?.supplier
  if (!supplier) return new Map()
  const holdRatePerDay = ground.holdRatePerYear / ground.days.openPerYear
  const products = own.flatMap(({ productId, offer, service }): PlannedProduct[] => {
    const { packCenti, breaks } = offer
    const outlook = outlooks.get(productId)
    if (!outlook) return []
    const { demand, cover, lifeDays } = outlook
    return [{ productId, demand, cover, packCenti, breaks, holdRatePerDay, service, lifeDays }]
  })
  const { carriageMinor, freeCarriageFromMinor } = supplier
  const cost = { carriageMinor, freeFromMinor: freeCarriageFromMinor, lineMinor: ground.lineCostMinor }
  return planSupplier(products, cost, previous)
}

/** Plans are made from the ledger and can be made again: keeping them is no act of anybody's, so no audit line. */
async function keep(
  desk: Desk,
  ground: PlanTerms,
  buyings: readonly Buying[],
  fresh: ReadonlyMap<string, Policy | null>,
): Promise<void> {
  await act(desk, async tx => {
    for (const buying of buyings) {
      const policy = fresh.get(buying.productId)
      if (policy === undefined) continue
      const data = {
        offerId: buying.offer.id,
        basis: basisOf(buying, ground),
        plannedOn: dateOfDay(ground.today),
        policy: policy ? policyJson(policy) : noJson,
      }
      await tx.shelfPlan.upsert({
        where: { productId: buying.productId },
        update: data,
        create: { productId: buying.productId, ...data },
      })
    }
  })
}

/** Everything a plan rests on beside the ledger. */
function basisOf(
  { offer, supplier, lead, service }: Buying,
  { holdRatePerYear, lineCostMinor }: PlanTerms,
): string {
  const { id, packCenti, breaks, shelfLifeDays } = offer
  const { carriageMinor, freeCarriageFromMinor, weekdays } = supplier
  return JSON.stringify([
    id,
    packCenti,
    breaks,
    shelfLifeDays,
    carriageMinor,
    freeCarriageFromMinor,
    weekdays,
  ]).concat(
    JSON.stringify([
      Math.round(lead.meanDays * 2),
      Math.round(lead.sdDays * 2),
      service,
      holdRatePerYear,
      lineCostMinor,
    ]),
  )
}

function policyJson(policy: Policy): JsonObject {
  return toJson({ ...policy, within: Array.from(policy.within) })
}

function policyFrom(json: unknown): Policy | null {
  if (json === null) return null
  const policy = json as Policy & { within: number[] }
  // One kept by an earlier version knows nothing of dates.
  return { ...policy, within: Float64Array.from(policy.within), lines: policy.lines ?? null }
}
