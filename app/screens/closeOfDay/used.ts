import type { CloseOfDayView, ShelfUnit, StepToConfirm } from '../../../main/api/views.ts'

/** Days ahead whose bookings the shelf must last for. */
const aheadDays = 14

/** What was used today of one product, what that leaves, and what is booked to be drawn of it. */
export interface Used {
  productId: string
  name: string
  unit: ShelfUnit
  amounts: number[]
  /** By the recipes together, where that is not what is proposed. */
  recipe: number | null
  left: number
  mustLast: number
  steps: StepToConfirm[]
  /** One of its steps wants a look. */
  look: boolean
  short: string | null
}

/** Today's steps by product: what wants a look first, then what runs short, then by name. */
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
        recipe: null,
        left: product?.usable ?? 0,
        mustLast: (product?.projection.days ?? [])
          .slice(0, aheadDays)
          .reduce((sum, day) => sum + day.booked, 0),
        steps: [],
        look: false,
        short: product?.projection.runsDry?.jobId ? product.projection.runsDry.words : null,
      }
      const wants = draw.lotId === null || draw.proposed !== draw.expected
      used.set(draw.productId, {
        ...row,
        amounts: [...row.amounts, draw.proposed],
        left: Math.max(0, row.left - draw.proposed),
        recipe: wants ? (row.recipe ?? 0) + draw.expected : row.recipe,
        steps: [...row.steps, step],
        look: row.look || wants,
      })
    }
  const rank = ({ look, short }: Used) => (look ? 0 : short === null ? 2 : 1)
  return [...used.values()].sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name))
}

export const keyOf = ({ jobId, position }: { jobId: string; position: number }) => `${jobId}-${position}`
