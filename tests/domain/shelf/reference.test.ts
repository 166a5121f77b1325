/** Published values for stock keeping; each case of the two files names its source and how the number came about. */
import { expect } from 'vitest'
import { leastCover } from '../../../main/domain/shelf/chances.ts'
import { costMoves, isGtin, type Move } from '../../../main/domain/shelf/index.ts'
import { croston } from '../../../main/domain/shelf/intermittent.ts'
import { normalLoss, normalQuantile } from '../../../main/domain/shelf/normal.ts'
import { economicQuantity, safetyStock } from '../../../main/domain/shelf/textbook.ts'
import { type Case, expectNear, runCases } from '../../reference/cases.ts'
import { fefo } from './fefoCase.ts'
import { poisson } from './poisson.ts'

const kindById = [
  [/^z-/, 'normal-quantile'],
  [/^loss-/, 'normal-loss'],
  [/^safety-/, 'safety-stock'],
  [/^eoq-breaks-/, 'eoq-breaks'],
  [/^eoq-/, 'eoq'],
  [/^croston-/, 'croston'],
  [/^newsvendor-poisson-/, 'newsvendor-poisson'],
  [/^fefo-/, 'fefo'],
  [/^cost-/, 'cost-of-sale'],
  [/^gtin-/, 'gtin'],
] as const

// biome-ignore lint/suspicious/noExplicitAny: every kind of case has its own shape
type Any = Case<any, any>

/** Moves of a small ledger: amounts in whole units, money in major units with two decimals. */
function ledger(
  entries: readonly { readonly buy?: number; readonly use?: number; readonly unitCost?: string }[],
) {
  return entries.map(
    ({ buy, use, unitCost }, seq): Move => ({
      id: String(seq),
      seq,
      lotId: 'lot',
      productId: 'product',
      kind: buy === undefined ? 'use' : 'receipt',
      centi: buy === undefined ? -use! * 100 : buy * 100,
      at: seq,
      by: 'anna',
      why: null,
      stepId: 'step',
      jobId: 'job',
      costMinor: buy === undefined ? null : Math.round(Number(unitCost) * 100) * buy,
      correctsId: null,
    }),
  )
}

const minor = (major: string) => Math.round(Number(major) * 100)

function moveCosts({ input, expected }: Any, method: 'average' | 'fifo') {
  const moves = ledger(input.moves)
  const costs = costMoves(moves, method)
  const uses = moves.filter(move => move.kind === 'use').map(move => -costs.byMove.get(move.id)!)
  expect(uses).toEqual(expected.costOfUse.map(minor))
  expect(costs.leftCenti).toBe(expected.left * 100)
  expect(costs.leftValueMinor).toBe(minor(expected.leftValue))
}

runCases('stock', kindById, {
  'normal-quantile': ({ input, expected, tolerance }: Any) =>
    expectNear(normalQuantile(input.serviceLevel ?? input.probability), expected.z, tolerance),
  'normal-loss': ({ input, expected, tolerance }: Any) =>
    expectNear(normalLoss(input.z), expected.loss, tolerance),
  'safety-stock': ({ input, expected, tolerance }: Any) => {
    const got = safetyStock(input)
    expectNear(got.safetyStock, expected.safetyStock, tolerance)
    expectNear(got.orderPoint, expected.orderPoint, tolerance)
  },
  eoq: ({ input, expected, tolerance }: Any) => {
    const got = economicQuantity(input.demandPerYear, input.orderCost, input.holdingPerUnitYear)
    expectNear(got.quantity, expected.quantity, tolerance)
    expectNear(got.yearlyCost, expected.yearlyCost ?? expected.yearlyOrderAndHoldingCost, tolerance)
    if (expected.ordersPerYear !== undefined) expectNear(got.ordersPerYear, expected.ordersPerYear, tolerance)
  },
  croston: ({ input, expected, tolerance }: Any) => {
    const got = croston(input.demand, input.alpha)!
    for (const key of ['size', 'interval', 'perPeriod', 'syntetosBoylan'] as const)
      expectNear(got[key], expected[key], tolerance)
  },
  'newsvendor-poisson': ({ input, expected }: Any) => {
    const chances = poisson(input.mean)
    const order = leastCover(chances, input.criticalRatio)
    expect(order).toBe(expected.order)
    if (expected.cdfAtOrder !== undefined) {
      const within = chances.slice(0, order + 1).reduce((sum, chance) => sum + chance, 0)
      expect(Math.abs(within - expected.cdfAtOrder)).toBeLessThan(1e-8)
    }
  },
  fefo: ({ input, expected }: Any) => expect(fefo(input)).toEqual(expected),
  'cost-of-sale': ({ input, expected, tolerance }: Any) => {
    const buys = input.purchases.map((entry: { quantity: number; unitCost: number }) => ({
      buy: entry.quantity,
      unitCost: String(entry.unitCost),
    }))
    const moves = ledger([...buys, { use: input.sold }])
    for (const method of ['fifo', 'average'] as const) {
      const costs = costMoves(moves, method)
      expectNear(-costs.byMove.get(moves.at(-1)!.id)! / 100, expected[`${method}Cost`], tolerance)
      expectNear(costs.leftValueMinor / 100, expected[`${method}Left`], tolerance)
    }
  },
  'perpetual-average-cost': (entry: Any) => moveCosts(entry, 'average'),
  'fifo-cost': (entry: Any) => moveCosts(entry, 'fifo'),
  gtin: ({ input, expected }: Any) => expect(isGtin(input.code)).toBe(expected.valid),
})
