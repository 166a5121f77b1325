import { expect, test } from 'vitest'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { toldCustomer } from '../../../main/services/job/toldCustomer.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { sendWords } from '../../../main/services/reminders/sendWords.ts'
import { bookJob } from '../bookJob.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { mailDesk } from './mailDesk.ts'

/** A booked car with a confirmation approved for its owner. */
async function approved() {
  const { desk, server, shop, car } = await mailDesk()
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  await agree(desk, car(), ['email'])
  const [draft] = (await toldCustomer(desk, { id })).drafts
  await sendWords(desk, { id, ...draft! })
  const state = async () => (await desk.store.read.jobWords.findFirstOrThrow()).state
  return { desk, server, shop, id, state }
}

test('Words about a booking that is somebody else’s by now stay here', async () => {
  const { desk, server, shop, id, state } = await approved()
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: shop.vehicles[1]! },
  })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.job.update({ where: { id }, data: { customerId } }),
  )
  await runOutbox(desk)
  expect(server.letters).toEqual([])
  expect(await state()).toBe('withdrawn')
})

test('So do words about a booking that was called off', async () => {
  const { desk, server, id, state } = await approved()
  const { version } = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  await cancelJob(desk, { id, version, reason: 'sold the car' })
  await runOutbox(desk)
  expect(server.letters).toEqual([])
  expect(await state()).toBe('withdrawn')
})
