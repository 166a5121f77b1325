import type { CloseOfDayView, ShelfUnit, StepToConfirm } from '../../../main/api/views.ts'

/** Days ahead whose bookings the shelf must last for. */
const aheadDays = 14

/** What was used today of one product, what that leaves, and what is booked to be drawn of it. */
export interface Used {
  productId: string
  name: string
  unit: ShelfUnit
  amounts: number[]
  left: number
  mustLast: number
  steps: StepToConfirm[]
  short: string | null
}

/** Steps that used what the recipe says, by product: what runs short first, then by name. */
export function usedByProduct(view: Pick<CloseOfDayView, 'stepsToConfirm' | 'products'>): Used[] {
  const byId = new Map(view.products.map(product => [product.id, product]))
  const used = new Map<string, Used>()
  for (const step of view.stepsToConfirm)
    for (const draw of step.draws) {
      const product = byId.get(draw.productId)
      const row = used.get(draw.productId) ?? {
        productId: draw.productId,
        name: draw.productName,
        unit: draw.unit,
        amounts: [],
        left: product?.usable ?? 0,
        mustLast: (product?.projection.days ?? [])
          .slice(0, aheadDays)
          .reduce((sum, day) => sum + day.booked, 0),
        steps: [],
        short: product?.projection.runsDry?.jobId ? product.projection.runsDry.words : null,
      }
      used.set(draw.productId, {
        ...row,
        amounts: [...row.amounts, draw.proposed],
        left: Math.max(0, row.left - draw.proposed),
        steps: [...row.steps, step],
      })
    }
  const rank = ({ short }: Used) => (short === null ? 1 : 0)
  return [...used.values()].sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name))
}

export const keyOf = ({ jobId, position }: { jobId: string; position: number }) => `${jobId}-${position}`
