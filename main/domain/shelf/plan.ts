/**
 * Order points and sizes of all products bought from one supplier. They share carriage, so what is best for one depends
 * on how often the others order: each is chosen in turn, given the others' pace, until the paces settle. It changes
 * slowly, with what the ledger teaches; once a week is often enough. What to order today is decided by `advise`.
 */
import { linePlan } from './expiryProgram.ts'
import type { OrderCost } from './orderCosts.ts'
import { choosePolicy, type Policy } from './policy.ts'
import type { PolicyInput } from './policyInput.ts'

export type PlannedProduct = { readonly productId: string } & Omit<PolicyInput, 'joinChance' | 'orderCost'>

export type Plans = ReadonlyMap<string, Policy | null>

const ROUNDS = 4

/**
 * Chooses a policy for each product; null for one without any use on record. `previous` plans, where there are some,
 * give the paces to start from, and one round is enough to follow slow change.
 */
export function planSupplier(
  products: readonly PlannedProduct[],
  orderCost: OrderCost,
  previous: Plans = new Map(),
): Map<string, Policy | null> {
  const plans = new Map(products.map(({ productId }) => [productId, previous.get(productId) ?? null]))
  const rounds =
    products.length === 1 || products.every(({ productId }) => previous.has(productId)) ? 1 : ROUNDS
  for (let round = 0; round < rounds; round++)
    for (const product of products)
      plans.set(
        product.productId,
        choosePolicy({ ...product, orderCost, joinChance: otherOrders(plans, product.productId) }),
      )
  for (const product of products) {
    const policy = plans.get(product.productId)
    if (!policy) continue
    const joinChance = otherOrders(plans, product.productId)
    plans.set(product.productId, byLines({ ...product, orderCost, joinChance }, policy))
  }
  return plans
}

/** The policy with what to order by dates, where the goods expire and are few enough for that. */
export function byLines(input: PolicyInput, policy: Policy): Policy {
  const { best, stepCenti } = policy
  // No good plan holds a pack more than the order point would have on its fullest day.
  const mostCells = Math.round((best.orderPointCenti + (best.packs + 1) * input.packCenti) / stepCenti)
  return { ...policy, lines: linePlan(input, mostCells) }
}

/** Chance a day that some other product calls for an order. */
function otherOrders(plans: Plans, productId: string): number {
  let none = 1
  for (const [id, plan] of plans) if (id !== productId && plan !== null) none *= 1 - plan.best.ownOrdersPerDay
  return 1 - none
}
