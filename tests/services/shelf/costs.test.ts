import { expect, it } from 'vitest'
import { followCosts } from '../../../main/services/shelf/costs.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { makeDesk } from '../makeDesk.ts'
import { shelfShop, stock } from './shelfShop.ts'

it('costs a correction by what the move it names cost in an earlier piece, each method by its own', async () => {
  const desk = await makeDesk('2026-04-15T11:00:00Z')
  const { topper, sizes } = await shelfShop(desk)
  const { read } = desk.store
  const costs = async () =>
    (await read.moveCost.findMany({ orderBy: { seq: 'asc' } })).map(each => [
      each.averageMinor,
      each.fifoMinor,
    ])
  // 500 ml for 20.00, then 500 ml for 30.00: 4 and 6 minor units a ml, 5 on average.
  const [first] = await stock(desk, topper, sizes.topper, 1, { costMinor: 2_000 })
  await stock(desk, topper, sizes.topper, 1, { costMinor: 3_000 })
  await takeStock(desk, { productId: topper, lotId: first!, amount: 100, reason: 'walk-in' })
  await followCosts(desk)
  const pieces = [
    [2_000, 2_000],
    [3_000, 3_000],
    [-500, -400],
  ]
  expect(await costs()).toEqual(pieces)

  // What the use took comes back: 5.00 on average, 4.00 by first in, first out.
  const { seq } = await read.stockMove.findFirstOrThrow({ where: { kind: 'use' } })
  await takeBackMove(desk, { seq, reason: 'another bottle' })
  await followCosts(desk)
  expect(await costs()).toEqual([...pieces, [500, 400]])

  const points = await read.costPoint.findMany()
  await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    await tx.moveCost.deleteMany()
    await tx.costPoint.deleteMany()
  })
  await followCosts(desk)
  expect(await costs()).toEqual([...pieces, [500, 400]])
  expect(await read.costPoint.findMany()).toEqual(points)
})
