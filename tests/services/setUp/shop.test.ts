import { expect, test } from 'vitest'
import { getShop, promisesRead } from '../../../main/services/setUp/shop.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk

test('What changed in the promises is told until somebody has read it, and a new shop has nothing to be told', async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  await testShop(desk)
  expect((await getShop(desk))?.promisesChanged).toBe(false)
  await promisesRead(desk)
  const lines = () => desk.store.read.auditLine.count({ where: { act: 'read what changed' } })
  expect(await lines()).toBe(0)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.shop.updateMany({ data: { promisesChanged: true } }),
  )
  expect((await getShop(desk))?.promisesChanged).toBe(true)
  await promisesRead(desk)
  expect((await getShop(desk))?.promisesChanged).toBe(false)
  expect(await lines()).toBe(1)
})
