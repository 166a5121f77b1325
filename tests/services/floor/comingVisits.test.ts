import { beforeEach, expect, it } from 'vitest'
import { comingVisits } from '../../../main/services/floor/comingVisits.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

it('names a car’s own booking until it is called off', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const row = await desk.store.read.job.findUniqueOrThrow({ where: { id: job.id } })
  const visits = (vehicleId: string) => comingVisits(desk.store.read, { vehicleId }, desk.now())
  expect(await visits(row.vehicleId)).toEqual([expect.stringMatching(/^Job 1 \(.*\): .* to /)])
  expect(await comingVisits(desk.store.read, { customerId: row.customerId }, desk.now())).toHaveLength(1)
  const other = shop.vehicles.find(id => id !== row.vehicleId) ?? ''
  expect(await visits(other)).toEqual([])
  await cancelJob(desk, { id: job.id, version: row.version, reason: 'ill' })
  expect(await visits(row.vehicleId)).toEqual([])
})
