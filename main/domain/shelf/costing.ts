/**
 * What stock cost, by weighted average (recomputed at every receipt) or first in, first out. IAS 2 paragraph 27 allows
 * both. Money is split in whole minor units with BigInt products: each move takes its share of what is left, rounded
 * once, and the rest stays, so that what was paid equals what was used, lost and is still there, to the last unit.
 */
import { say } from '../language/index.ts'
import { divideRounded } from '../money/decimal.ts'
import { refuse } from '../refusal.ts'
import { inLedgerOrder, type Move } from './ledger.ts'

export type CostMethod = 'average' | 'fifo'

/** What is left of a product with what it cost, oldest first: all that costing has to know of the moves before. */
export type CostState = readonly { readonly centi: number; readonly valueMinor: bigint }[]

export interface Costs {
  /** After the last of the moves; the costing goes on from here. */
  readonly state: CostState
  /** Cost of each move, by its id: what it added to the stock's value, or (negative) took from it. */
  readonly byMove: ReadonlyMap<string, number>
  readonly leftCenti: number
  readonly leftValueMinor: number
}

interface Layer {
  centi: number
  valueMinor: bigint
}

/** A move that was costed before, as a correction needs it. */
export interface CostedBefore {
  readonly centi: number
  readonly costMinor: number
}

/**
 * Costs the moves of one product, or those that follow on moves costed before: from the state they left, with what
 * corrections name of them in `before`, by id. Found stock (a count or correction upwards) was paid for by nobody now and adds
 * amount without value; a correction that names the move it puts right brings back what that move took, in proportion.
 */
export function costMoves(
  moves: readonly Move[],
  method: CostMethod,
  from: CostState = [],
  before: ReadonlyMap<string, CostedBefore> = new Map(),
): Costs {
  const layers: Layer[] = from.map(layer => ({ ...layer }))
  const byMove = new Map<string, number>()
  const byId = new Map(moves.map(move => [move.id, move]))
  const costed = (id: string): CostedBefore | undefined => {
    const move = byId.get(id)
    return move ? { centi: move.centi, costMinor: byMove.get(id) ?? 0 } : before.get(id)
  }
  for (const move of inLedgerOrder(moves)) {
    const value = move.centi > 0 ? added(move, costed) : -taken(layers, BigInt(-move.centi), move)
    if (move.centi > 0) enter(layers, { centi: move.centi, valueMinor: value }, move, method)
    byMove.set(move.id, Number(value) || 0)
  }
  return {
    byMove,
    state: layers,
    ...leftOf(layers),
  }
}

/** How much is left and what it is worth. */
export function leftOf(state: CostState): Pick<Costs, 'leftCenti' | 'leftValueMinor'> {
  return {
    leftCenti: state.reduce((sum, layer) => sum + layer.centi, 0),
    leftValueMinor: Number(state.reduce((sum, layer) => sum + layer.valueMinor, 0n)),
  }
}

function added(move: Move, costed: (id: string) => CostedBefore | undefined): bigint {
  if (move.kind === 'receipt') return BigInt(move.costMinor ?? 0)
  const wrong = move.correctsId === null ? undefined : costed(move.correctsId)
  const took = wrong === undefined ? 0 : -wrong.costMinor
  if (!wrong || took <= 0 || wrong.centi >= 0) return 0n
  return share(BigInt(took), BigInt(Math.min(move.centi, -wrong.centi)), BigInt(-wrong.centi))
}

/** Average costing keeps one layer. Amounts without value of their own join the newest layer and thin its price. */
function enter(layers: Layer[], layer: Layer, move: Move, method: CostMethod): void {
  const last = layers.at(-1)
  if (last && (method === 'average' || move.kind !== 'receipt')) {
    last.centi += layer.centi
    last.valueMinor += layer.valueMinor
  } else layers.push(layer)
}

function taken(layers: Layer[], amount: bigint, move: Move): bigint {
  let open = amount
  let value = 0n
  while (open > 0n) {
    const layer = layers[0]
    if (!layer)
      refuse(
        'beyond-stock',
        { centi: move.centi },
        say('Move {id} takes more than the ledger holds at that point; record what was found before it.', {
          id: move.id,
        }),
      )
    const there = BigInt(layer.centi)
    const part = open < there ? open : there
    const cost = share(layer.valueMinor, part, there)
    layer.centi -= Number(part)
    layer.valueMinor -= cost
    value += cost
    open -= part
    if (layer.centi === 0) layers.shift()
  }
  return value
}

function share(valueMinor: bigint, part: bigint, whole: bigint): bigint {
  return divideRounded(valueMinor * part, whole, 'half-up')
}
