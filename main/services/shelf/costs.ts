/** What the moves of the ledger cost: each is costed once, from where the last costing stopped. */
import {
  type CostedBefore,
  type CostMethod,
  type CostState,
  costMoves,
  type Move,
  type MoveKind,
} from '../../domain/shelf/index.ts'
import { type CostedRow, costsOf, saveCosts, uncostedRows } from '../../store/costRows.ts'
import { fromJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { ownPace } from '../desk/beside.ts'
import { act, type Desk } from '../desk/desk.ts'

/** Moves costed in one piece, after which others come to their turn. */
const piece = 500

/** Costs what was not costed yet. Made from the ledger and no act of anybody's, so there is no audit line. */
export async function followCosts(desk: Desk, pace = ownPace()): Promise<void> {
  while ((await uncostedRows(desk.store.read, 1)).length > 0) {
    if (!(await pace.turn()) || (await act(desk, costPiece)) < piece) return
  }
}

/** Costs the first moves that are not costed yet; answers how many. */
export async function costPiece(tx: Tx): Promise<number> {
  const rows = await uncostedRows(tx, piece)
  const points = await costPoints(tx)
  const named = await costsOf(
    tx,
    rows.flatMap(row => row.correctsSeq ?? []),
  )
  const before = (method: CostMethod): Map<string, CostedBefore> =>
    new Map(
      named.map(({ seq, centi, averageMinor, fifoMinor }) => [
        String(seq),
        { centi, costMinor: method === 'average' ? averageMinor : fifoMinor },
      ]),
    )
  const [average, fifo] = [before('average'), before('fifo')]
  for (const [productId, own] of Map.groupBy(rows, row => row.productId)) {
    const moves = own.map(moveOf)
    const from = points.get(productId)
    const byAverage = costMoves(moves, 'average', from?.average, average)
    const byFifo = costMoves(moves, 'fifo', from?.fifo, fifo)
    await saveCosts(
      tx,
      own.map(({ seq }) => ({
        seq,
        averageMinor: byAverage.byMove.get(String(seq)) ?? 0,
        fifoMinor: byFifo.byMove.get(String(seq)) ?? 0,
      })),
    )
    const data = { average: stateJson(byAverage.state), fifo: stateJson(byFifo.state) }
    await tx.costPoint.upsert({ where: { productId }, update: data, create: { productId, ...data } })
  }
  return rows.length
}

/** What is left of each product with what it cost, as far as the ledger is costed. */
export async function costPoints(
  tx: Tx,
  productId?: string,
): Promise<Map<string, Record<CostMethod, CostState>>> {
  const rows = await tx.costPoint.findMany({ where: productId === undefined ? {} : { productId } })
  return new Map(
    rows.map(({ productId, average, fifo }) => [
      productId,
      { average: stateOf(average), fifo: stateOf(fifo) },
    ]),
  )
}

function stateJson(state: CostState) {
  return toJson(state.map(({ centi, valueMinor }) => [centi, Number(valueMinor)]))
}

function stateOf(json: unknown): CostState {
  return fromJson<[number, number][]>(json).map(([centi, minor]) => ({ centi, valueMinor: BigInt(minor) }))
}

function moveOf(row: CostedRow): Move {
  return {
    ...row,
    id: String(row.seq),
    lotId: '',
    kind: row.kind as MoveKind,
    by: '',
    why: null,
    stepId: null,
    jobId: null,
    correctsId: row.correctsSeq === null ? null : String(row.correctsSeq),
  }
}
