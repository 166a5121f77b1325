/** The ledger is only ever added to: what an act drew is given back by moves set against it, to the last drop. */
import { beforeEach, expect, test } from 'vitest'
import { finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { lotRows } from '../../../main/store/lotRows.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from '../shelf/shelfShop.ts'
import { rowsOf } from './rowsOf.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

/** Everything but the ledger's own lines, which stay. */
const rows = () => {
  const { StockMove: _, ...rest } = rowsOf(desk.store.source.file)
  return rest
}

const bottles = async () =>
  (await lotRows(desk.store.read, [shop.coating])).map(({ centi, openedOn }) => ({ centi, openedOn }))

test('A step finished with what it drew: each bottle holds what it held, and the one it opened is closed', async () => {
  // Thirty millilitres are wanted; the first bottle has ten left, and a second one is opened for the rest.
  const [first] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-01-31' })
  await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-03-31' })
  await takeStock(desk, { productId: shop.coating, lotId: first!, amount: 40, reason: 'test panel' })
  const opened = (await bottles())[0]!.openedOn
  const before = rows()
  expect(await bottles()).toEqual([
    { centi: 1_000, openedOn: opened },
    { centi: 5_000, openedOn: null },
  ])
  const job = await book(desk, shop)
  let atWork = {}
  await workUntil(desk, job, 2, async version => {
    atWork = rows()
    const done = await finishStep(desk, { id: job.jobId, version, position: 2, asPlanned: true })
    expect((await bottles()).filter(each => each.centi > 0)).toMatchObject([{ centi: 3_000 }])
    return done
  })
  expect(atWork).not.toEqual(before)
  await takeBack(desk, {})
  expect(await bottles()).toEqual([
    { centi: 1_000, openedOn: opened },
    { centi: 5_000, openedOn: null },
  ])
  expect(rows()).toEqual(atWork)
  const moves = await desk.store.read.stockMove.findMany({ where: { jobId: job.jobId } })
  expect(moves.map(({ kind, centi }) => [kind, centi])).toEqual([
    ['use', -1_000],
    ['use', -2_000],
    ['correction', 2_000],
    ['correction', 1_000],
  ])
})

test('Goods entered by mistake are gone again, but their bottles stand in the ledger, empty', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 2)
  await takeBack(desk, {})
  expect((await bottles()).filter(each => each.centi > 0)).toEqual([])
  const moves = await desk.store.read.stockMove.findMany()
  expect(moves.map(({ kind, centi }) => [kind, centi])).toEqual([
    ['receipt', 5_000],
    ['receipt', 5_000],
    ['correction', -5_000],
    ['correction', -5_000],
  ])
})

test('Goods that were drawn from since do not go again', async () => {
  const [first] = await stock(desk, shop.coating, shop.sizes.coating, 1)
  const act = await desk.store.read.act.findFirstOrThrow({ orderBy: { id: 'desc' } })
  await takeStock(desk, { productId: shop.coating, lotId: first!, amount: 40, reason: 'test panel' })
  const before = rows()
  await expect(takeBack(desk, { actId: act.id })).rejects.toThrow('is not taken back')
  expect(rows()).toEqual(before)
})

test('A line put right since in the ledger is not given back twice, nor is what put it right', async () => {
  const [first] = await stock(desk, shop.coating, shop.sizes.coating, 1)
  await takeStock(desk, { productId: shop.coating, lotId: first!, amount: 10, reason: 'test panel' })
  const used = await desk.store.read.act.findFirstOrThrow({ orderBy: { id: 'desc' } })
  const use = await desk.store.read.stockMove.findFirstOrThrow({ where: { kind: 'use' } })
  await takeBackMove(desk, { seq: use.seq, reason: 'never taken' })
  const before = rows()
  await expect(takeBack(desk, { actId: used.id })).rejects.toMatchObject({ code: 'stands-on-it' })
  await expect(takeBack(desk, {})).rejects.toThrow('count the bottle instead')
  expect(rows()).toEqual(before)
})

test('A coat that was begun by mistake is not begun; what was looked at for it stands', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 1)
  const job = await workUntil(desk, await book(desk, shop), 1)
  const before = rows()
  await startStep(desk, { id: job.jobId, version: job.version, position: 2, accepted: true })
  await takeBack(desk, {})
  expect(rows()).toEqual(before)
  expect(await desk.store.read.conditionCheck.count()).toBe(1)
})
