import { openSpans } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import {
  type CarCheck,
  checkTreatment,
  type SizeClass,
  sizeClasses,
  type Treatment,
  type TreatmentProduct,
  type TreatmentStep,
} from '../../domain/shop/index.ts'
import { layOut } from '../../domain/treatment/index.ts'
import { fromJson } from '../../store/json.ts'
import type { TreatmentStep as TreatmentStepRow } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { type ShopView, shopOf } from '../desk/shopView.ts'

export const withSteps = {
  steps: {
    orderBy: { position: 'asc' },
    omit: { id: true, treatmentId: true, position: true, draws: true },
  },
} as const

type StepRow = Omit<TreatmentStepRow, 'id' | 'treatmentId' | 'position' | 'draws'>

/** A treatment's row, read `withSteps`, as the domain and the screens know it. */
export function treatmentOf<Row extends { prices: unknown; checks: unknown; steps: readonly StepRow[] }>(
  row: Row,
): Omit<Row, 'prices' | 'checks' | 'steps'> & {
  prices: Record<SizeClass, number>
  checks: CarCheck[]
  steps: TreatmentStep[]
} {
  return {
    ...row,
    prices: row.prices as Record<SizeClass, number>,
    checks: fromJson<CarCheck[]>(row.checks),
    steps: fromJson<TreatmentStep[]>(row.steps),
  }
}

/**
 * Refuses a treatment that the shop, with its hours and the products in use, could not carry out: besides each step for
 * itself, the chain is laid out as a booking would, so that waits which contradict each other or a cure are seen now.
 */
export async function checkSold(tx: Tx, treatment: Treatment): Promise<void> {
  const shop = await shopOf(tx)
  const rows = await tx.product.findMany({ where: { archivedAt: null } })
  const products = rows as unknown as TreatmentProduct[]
  checkTreatment(treatment, products, longestOpening(shop))
  const byId = new Map(products.map(product => [product.id, product]))
  for (const sizeClass of sizeClasses)
    if (treatment.steps.some(step => step.minutes[sizeClass] > 0))
      renamed('treatments.0.', '', () =>
        layOut({
          treatments: [treatment],
          products: byId,
          sizeClass,
          finish: 'gloss',
          condition: 'good',
          conditionFactors: shop.conditionFactors,
          gridMin: shop.gridMin,
          handoverRule: shop.handoverRule,
          leaving: 'dry',
        }),
      )
}

/** Refuses what has just been written to a product where a treatment that uses it can then not be carried out. */
export async function checkUsers(tx: Tx, productId: string, field: string): Promise<void> {
  const users = await tx.treatment.findMany({
    where: { archivedAt: null, steps: { some: { productId } } },
    include: withSteps,
  })
  for (const treatment of users)
    try {
      await checkSold(tx, treatmentOf(treatment))
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      const words = say('The treatment "{name}" could not be carried out any more. {message}', {
        name: treatment.name,
        message: error.message,
      })
      throw new Refusal(error.code, field, error.value, words)
    }
}

/** Runs `check` and names the field of its refusal as the caller's input does. */
function renamed(prefix: string, by: string, check: () => unknown): void {
  try {
    check()
  } catch (error) {
    if (!(error instanceof Refusal) || !error.field.startsWith(prefix)) throw error
    throw new Refusal(error.code, by + error.field.slice(prefix.length), error.value, error.message)
  }
}

/** The longest unbroken opening of an ordinary fortnight, in minutes. */
function longestOpening({ weekly }: ShopView): number {
  const spans = openSpans({ zone: 'UTC', weekly, exceptions: [] }, 0, 14 * 1440)
  return Math.max(0, ...spans.map(span => span.to - span.from))
}
