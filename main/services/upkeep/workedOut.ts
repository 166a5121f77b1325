/**
 * Due days of many cars at once, where one car's plan may be past working out: a rule written by another version, a
 * date off the calendar. Such a plan is named with its reason, and every other car's is answered all the same.
 */
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import {
  type DueQuestion,
  dueList,
  type ListedDue,
  type NextDue,
  type NoneDue,
  nextDue,
  visitAnswered,
} from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import type { KeptVisitPlan } from './kept.ts'

export interface FailedPlan {
  readonly kept: KeptVisitPlan
  /** In words. */
  readonly why: string
}

/** What keeps a plan from being worked out, in words; anything else that goes wrong is thrown on. */
function reasonOf(error: unknown): string {
  if (error instanceof Refusal) return say('It cannot be worked out: {message}', { message: error.message })
  throw error
}

/** What `work` gives, or in words why the plan cannot be worked out. */
export function workedOut<T extends object>(work: () => T): T | { readonly why: string } {
  try {
    return work()
  } catch (error) {
    return { why: reasonOf(error) }
  }
}

/** The visits due up to a day, by due day, and the plans that cannot be worked out. */
export function dueOf(
  kept: readonly KeptVisitPlan[],
  question: DueQuestion & { readonly until: string },
): { due: ListedDue[]; failed: FailedPlan[] } {
  const reasons = new Map<string, string>()
  const due = dueList(kept, question, (planId, reason) => reasons.set(planId, reasonOf(reason)))
  if (reasons.size === 0) return { due, failed: [] }
  return {
    due: due.filter(visit => !reasons.has(visit.planId)),
    failed: kept.flatMap(each => {
      const why = reasons.get(each.row.id)
      return why === undefined ? [] : [{ kept: each, why }]
    }),
  }
}

/** A plan's next visit, that none follows, or that it cannot be worked out, each with its sentence. */
export function nextOf(
  { plan, records, car }: KeptVisitPlan,
  question: DueQuestion,
): NextDue | (Omit<NoneDue, 'because'> & { readonly because: NoneDue['because'] | 'failed' }) {
  try {
    return nextDue(plan, records, car, question)
  } catch (error) {
    return { planId: plan.id, dueOn: null, because: 'failed', sentence: reasonOf(error) }
  }
}

/** Which visit of a plan one made on a day answers; none where the plan cannot be worked out: it was made all the same. */
export function answeredOf({ plan, records }: KeptVisitPlan, onDay: string, zone: string): string | null {
  try {
    return visitAnswered(plan, records, onDay, zone)
  } catch (error) {
    reasonOf(error)
    return null
  }
}

export type FailedPlanView = Awaited<ReturnType<typeof failedViews>>[number]

/** The plans that cannot be worked out with whose they are. */
export async function failedViews(tx: Tx, failed: readonly FailedPlan[]) {
  const cars = await tx.vehicle.findMany({
    where: { id: { in: failed.slice(0, mostNamed).map(({ kept }) => kept.row.vehicleId) } },
    include: { customer: { select: { name: true } } },
  })
  const byId = new Map(cars.map(car => [car.id, car]))
  return failed.slice(0, mostNamed).flatMap(({ kept: { row }, why }) => {
    const car = byId.get(row.vehicleId)
    if (!car) return []
    const { plate, customer } = car
    return [{ planId: row.id, vehicleId: car.id, title: row.title, plate, customerName: customer.name, why }]
  })
}

/** Nobody mends more of them from one list. */
const mostNamed = 200
