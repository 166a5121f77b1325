import { expect, it } from 'vitest'
import { callList, letterList } from '../../../main/services/reminders/deskLists.ts'
import { sentByHand } from '../../../main/services/reminders/messageActs.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { mailDesk } from './mailDesk.ts'
import { approvedBatch, duePlan } from './reminderDesk.ts'

it('a car that changed hands is written about neither to its old owner, by no way, nor to the new one without their word', async () => {
  const { desk, server, shop } = await mailDesk()
  const [first, second, third] = shop.vehicles
  const ways = [
    { car: first!, way: 'email' },
    { car: second!, way: 'letter' },
    { car: third!, way: 'text' },
  ] as const
  for (const { car, way } of ways) {
    await agree(desk, car, [way], `${way}@example.com`)
    await duePlan(desk, car)
  }
  const approved = await approvedBatch(desk)
  expect(approved.map(each => each.state)).toEqual(['approved', 'approved', 'approved'])
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: shop.vehicles[3]! },
  })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.vehicle.updateMany({ where: { id: { in: [first!, second!, third!] } }, data: { customerId } }),
  )
  expect(await callList(desk)).toEqual([])
  expect(await letterList(desk)).toEqual([])
  for (const each of approved.filter(each => each.channel !== 'email'))
    await expect(sentByHand(desk, each)).rejects.toMatchObject({ code: 'car-sold' })
  expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
  expect(server.letters).toEqual([])
  expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
})
