import { beforeEach, describe, expect, it } from 'vitest'
import { getCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { carSold } from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { changeHands } from '../../../main/services/upkeep/changeHands.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { duePlan } from '../reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { agree } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
let vehicleId: string
let ownerId: string
let buyerId: string
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  shop = await testShop(desk)
  vehicleId = shop.vehicles[0]!
  ownerId = (await car()).customerId
  buyerId = (await saveCustomer(desk, { name: 'Oda Brandt', email: 'oda@example.com' })).id
})

const car = () => desk.store.read.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
const give = async (rest: { on?: string; accepted?: boolean } = {}, to: object = { customerId: buyerId }) =>
  changeHands(desk, { vehicleId, version: (await car()).version, to: to as { customerId: string }, ...rest })

describe('a car that changes hands', () => {
  it('keeps its coats and plans, and both owners’ pages say so', async () => {
    await duePlan(desk, vehicleId)
    await carSold(desk, { vehicleId, on: '2026-04-10' })
    const before = await carUpkeep(desk, { vehicleId })
    await give({ on: '2026-04-12' })
    const after = await carUpkeep(desk, { vehicleId })
    expect(after.layers).toEqual(before.layers)
    expect(after.plans.map(plan => plan.id)).toEqual(before.plans.map(plan => plan.id))
    expect(after).toMatchObject({ customerId: buyerId, soldOn: null })
    expect(after.plans[0]?.next?.dueOn).toBe('2026-04-28')
    expect(after.timeline[0]).toMatchObject({ kind: 'hands', on: '2026-04-12' })
    expect((await getCustomer(desk, { id: ownerId })).formerCars).toMatchObject([
      { vehicleId, onDay: '2026-04-12', toId: buyerId },
    ])
  })

  it('takes what waited to be sent back, and the new owner is written to only by their own word', async () => {
    await agree(desk, vehicleId, ['email'], 'former@example.com')
    await duePlan(desk, vehicleId)
    await prepareBatch(desk)
    expect((await batch(desk)).messages).toMatchObject([{ state: 'draft' }])
    await give()
    expect(await desk.store.read.message.findMany()).toMatchObject([
      { state: 'withdrawn', withdrawnBecause: 'The car has a new owner.' },
    ])
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
    await agree(desk, vehicleId, ['email'], 'oda@example.com')
    expect(await prepareBatch(desk)).toMatchObject({ written: 1 })
    expect((await batch(desk)).messages[0]).toMatchObject({ address: 'oda@example.com', state: 'draft' })
  })

  it('asks before visits not begun go over, and they do', async () => {
    const { id: jobId } = await bookJob(desk, shop, { treatments: ['wash'] })
    await expect(give()).rejects.toMatchObject({ code: 'touches-bookings' })
    expect((await car()).customerId).toBe(ownerId)
    await give({ accepted: true })
    expect(await desk.store.read.job.findUniqueOrThrow({ where: { id: jobId } })).toMatchObject({
      customerId: buyerId,
    })
  })

  it('goes to somebody who is written down in the same act, or nothing is', async () => {
    const count = () => desk.store.read.customer.count()
    const before = await count()
    await expect(give({ on: '2026-04-16' }, { customer: { name: 'New Owner' } })).rejects.toMatchObject({
      code: 'to-come',
      field: 'on',
    })
    expect(await count()).toBe(before)
    await expect(give({}, { customer: { name: ' ' } })).rejects.toMatchObject({ field: 'to.customer.name' })
    const { customerId } = await give({}, { customer: { name: 'New Owner' } })
    expect((await car()).customerId).toBe(customerId)
  })

  it('is refused to whoever has it, before it last did so, and on an older look at it', async () => {
    const { version } = await car()
    await expect(give({}, { customerId: ownerId })).rejects.toMatchObject({ code: 'same' })
    await give({ on: '2026-04-12' })
    await expect(give({ on: '2026-04-11' }, { customerId: ownerId })).rejects.toMatchObject({
      code: 'before-last',
    })
    await expect(
      changeHands(desk, { vehicleId, version, to: { customerId: ownerId } }),
    ).rejects.toMatchObject({ code: 'stale' })
  })
})
