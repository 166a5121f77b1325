/** What the shelf lost: waste by reason, and stock carried at no more than it can still fetch or save. */
import { checkMinor } from '../money/minor.ts'
import type { Costs } from './costing.ts'
import type { Move } from './ledger.ts'

export interface WriteOff {
  readonly why: string
  readonly centi: number
  readonly costMinor: number
  readonly moves: number
}

/** Waste between two epoch minutes (`[fromAt, toAt)`), gathered by its reason, the dearest first. One product a call. */
export function writeOffs(moves: readonly Move[], costs: Costs, fromAt: number, toAt: number): WriteOff[] {
  const byWhy = new Map<string, { centi: number; costMinor: number; moves: number }>()
  for (const move of moves) {
    if (move.kind !== 'waste' || move.at < fromAt || move.at >= toAt) continue
    const sum = byWhy.get(move.why ?? '') ?? { centi: 0, costMinor: 0, moves: 0 }
    byWhy.set(move.why ?? '', {
      centi: sum.centi - move.centi,
      costMinor: sum.costMinor - (costs.byMove.get(move.id) ?? 0),
      moves: sum.moves + 1,
    })
  }
  return [...byWhy]
    .map(([why, sum]) => ({ why, ...sum }))
    .sort((a, b) => b.costMinor - a.costMinor || (a.why < b.why ? -1 : 1))
}

/** The lower of cost and what the stock is still worth (net realisable value), with the difference (IAS 2 paragraph 9). */
export function carriedValue(
  costMinor: number,
  worthMinor: number,
): { carriedMinor: number; writeDownMinor: number } {
  const cost = checkMinor(costMinor, 'costMinor')
  const carriedMinor = Math.min(cost, checkMinor(worthMinor, 'worthMinor'))
  return { carriedMinor, writeDownMinor: cost - carriedMinor }
}
