import { expect, test } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import { callersVehicle } from '../../../main/services/records/caller.ts'
import type { CallerInput } from '../../../main/services/records/inputs.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

const car = { plate: 'QLV 318', make: 'Marlo', model: 'Wendrel', colour: 'grey', note: '' }
const vehicle = { ...car, sizeClass: 'medium' as const, finish: 'gloss' as const }

async function shop() {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  const { vehicles } = await testShop(desk)
  const caller = (input: CallerInput) => act(desk, (tx, audit, at) => callersVehicle(tx, audit, at, input))
  return { desk, vehicles, caller }
}

test('A caller’s car is one on file, a new one of theirs, or new with them', async () => {
  const { vehicles, caller } = await shop()
  const known = await caller({ vehicleId: vehicles[0]! })
  expect(known.id).toBe(vehicles[0])
  const second = await caller({ customerId: known.customerId, vehicle })
  expect(second).toMatchObject({ customerId: known.customerId, plate: 'QLV 318' })
  const stranger = { name: 'Ada Merrin', phone: '', note: '' }
  const third = await caller({
    customer: stranger,
    vehicle: { ...vehicle, plate: 'QLV 402' },
    accepted: true,
  })
  expect(third).toMatchObject({ plate: 'QLV 402' })
  expect(third.customerId).not.toBe(known.customerId)
})

test('A fault names its field by the part of the form it is in, and nothing of the caller is kept', async () => {
  const { desk, caller } = await shop()
  const people = () => desk.store.read.customer.count()
  const before = await people()
  const customer = { name: ' ', phone: '', note: '' }
  await expect(caller({ customer, vehicle, accepted: true })).rejects.toMatchObject({
    field: 'customer.name',
  })
  await expect(
    caller({
      customer: { ...customer, name: 'Ada Merrin' },
      vehicle: { ...vehicle, plate: 'x'.repeat(100) },
      accepted: true,
    }),
  ).rejects.toMatchObject({ field: 'vehicle.plate' })
  expect(await people()).toBe(before)
})
