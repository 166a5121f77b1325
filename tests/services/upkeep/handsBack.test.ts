import { beforeEach, expect, it } from 'vitest'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { carSold } from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { changeHands } from '../../../main/services/upkeep/changeHands.ts'
import { takeHandsBack } from '../../../main/services/upkeep/handsBack.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { everyRow } from '../records/everyRow.ts'
import { duePlan } from '../reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let vehicleId: string
let buyerId: string
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  shop = await testShop(desk)
  vehicleId = shop.vehicles[0]!
  buyerId = (await saveCustomer(desk, { name: 'Oda Brandt', email: 'oda@example.com' })).id
})

const car = () => desk.store.read.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
const give = async () =>
  changeHands(desk, {
    vehicleId,
    version: (await car()).version,
    to: { customerId: buyerId },
    accepted: true,
  })
const back = async (accepted = true) =>
  takeHandsBack(desk, { id: vehicleId, version: (await car()).version, accepted })

it('gives the car back as it was, sold on its day again, with the visits that had gone over', async () => {
  await duePlan(desk, vehicleId)
  await bookJob(desk, shop, { treatments: ['wash'] })
  await carSold(desk, { vehicleId, on: '2026-04-10' })
  const { customerId: ownerId } = await car()
  const before = everyRow(desk)
  await give()
  await expect(back(false)).rejects.toMatchObject({ code: 'touches-bookings' })
  expect((await car()).customerId).toBe(buyerId)
  expect(await back()).toMatchObject({ customerId: ownerId, id: vehicleId })
  expect(await carUpkeep(desk, { vehicleId })).toMatchObject({
    customerId: ownerId,
    soldOn: '2026-04-10',
    owners: [],
  })
  const after = everyRow(desk)
  for (const table of ['UpkeepEntry', 'OwnerChange', 'UpkeepPlan', 'JobTreatment'])
    expect(after[table as keyof typeof after], table).toEqual(before[table as keyof typeof before])
  expect(await desk.store.read.job.findMany({ where: { customerId: buyerId } })).toEqual([])
})

it('is refused where the car never changed hands, was worked on for the new owner, or the former one is put away', async () => {
  await expect(back()).rejects.toMatchObject({ code: 'missing', field: 'id' })
  const { customerId: ownerId } = await car()
  await give()
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.customer.update({ where: { id: ownerId }, data: { archivedAt: 1 } }),
  )
  await expect(back()).rejects.toMatchObject({ code: 'gone' })
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.customer.update({ where: { id: ownerId }, data: { archivedAt: null } }),
  )
  const { version } = await car()
  const { id: jobId } = await bookJob(desk, shop, { treatments: ['wash'] })
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.job.update({ where: { id: jobId }, data: { arrivedAt: desk.now() } }),
  )
  await expect(back()).rejects.toMatchObject({ code: 'used' })
  await expect(
    takeHandsBack(desk, { id: vehicleId, version: version - 1, accepted: true }),
  ).rejects.toMatchObject({ code: 'used' })
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.job.update({ where: { id: jobId }, data: { arrivedAt: null } }),
  )
  await expect(
    takeHandsBack(desk, { id: vehicleId, version: version - 1, accepted: true }),
  ).rejects.toMatchObject({ code: 'stale' })
})
