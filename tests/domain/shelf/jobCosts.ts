import type { Costs } from '../../../main/domain/shelf/costing.ts'
import type { Move } from '../../../main/domain/shelf/index.ts'

interface JobCost {
  readonly jobId: string
  readonly costMinor: number
  readonly byProduct: ReadonlyMap<string, number>
}

/** Move by move, what the database sums: the chemical cost of each job: its uses, less what corrections of them brought back. `costs` are per product. */
export function jobCosts(moves: readonly Move[], costs: ReadonlyMap<string, Costs>): JobCost[] {
  const byId = new Map(moves.map(move => [move.id, move]))
  const jobs = new Map<string, Map<string, number>>()
  for (const move of moves) {
    const served =
      move.kind === 'use' ? move : move.correctsId === null ? undefined : byId.get(move.correctsId)
    if (served?.kind !== 'use' || served.jobId === null) continue
    const cost = -(costs.get(move.productId)?.byMove.get(move.id) ?? 0)
    const products = jobs.get(served.jobId) ?? new Map<string, number>()
    products.set(move.productId, (products.get(move.productId) ?? 0) + cost)
    jobs.set(served.jobId, products)
  }
  return [...jobs].map(([jobId, byProduct]) => ({
    jobId,
    byProduct,
    costMinor: [...byProduct.values()].reduce((sum, cost) => sum + cost, 0),
  }))
}
