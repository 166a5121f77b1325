import { beforeEach, expect, it } from 'vitest'
import {
  archiveLendable,
  listLendables,
  orderLendables,
  restoreLendable,
  saveLendable,
} from '../../../main/services/setUp/lendables.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const names = async (archived = false) => (await listLendables(desk, { archived })).map(row => row.name)

it('lists the things in their order, with those put away behind them when asked', async () => {
  const { id: car } = await saveLendable(desk, { name: ' Blue car ', kind: 'loan car' })
  const { id: box } = await saveLendable(desk, { name: 'Box', kind: 'key box' })
  expect(await names()).toEqual(['Blue car', 'Box'])
  await orderLendables(desk, { ids: [box, car] })
  expect(await names()).toEqual(['Box', 'Blue car'])
  await archiveLendable(desk, { id: box, version: 1 })
  expect([await names(), await names(true)]).toEqual([['Blue car'], ['Blue car', 'Box']])
  await restoreLendable(desk, { id: box, version: 2 })
  expect(await names()).toEqual(['Blue car', 'Box'])
})

it('keeps a name for one thing, and takes no empty one', async () => {
  await saveLendable(desk, { name: 'Box', kind: 'key box' })
  for (const name of ['box', ' '])
    await expect(saveLendable(desk, { name, kind: 'key box' })).rejects.toMatchObject({ field: 'name' })
})

it('is neither put away nor made another thing while it is lent', async () => {
  const { id } = await saveLendable(desk, { name: 'Box', kind: 'key box' })
  const { id: jobId } = await bookJob(desk, shop, { treatments: ['wash'] })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.jobLoan.create({ data: { jobId, lendableId: id } }),
  )
  await expect(archiveLendable(desk, { id, version: 1 })).rejects.toMatchObject({ code: 'still-lent' })
  await expect(saveLendable(desk, { id, version: 1, name: 'Box', kind: 'loan car' })).rejects.toMatchObject({
    code: 'still-lent',
    field: 'kind',
  })
  await saveLendable(desk, { id, version: 1, name: 'Box 2', kind: 'key box' })
})
