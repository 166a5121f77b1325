import type { Channel } from '../../../main/api/views.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { giveConsent, saveReach } from '../../../main/services/reminders/consents.ts'
import { type BookWish, bookJob } from '../bookJob.ts'
import type { TestDesk } from '../makeDesk.ts'
import type { TestShop } from '../testShop.ts'

export function iso(at: number): string {
  return Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString()
}

/** Books a job, carries it out as planned and hands the car over; the clock stands at the handover afterwards. */
export async function carryOut(desk: TestDesk, shop: TestShop, wish: BookWish): Promise<string> {
  const { id } = await bookJob(desk, shop, wish)
  const version = async () => (await getJob(desk, { id })).version
  const steps = await desk.store.read.jobStep.findMany({ where: { jobId: id }, orderBy: { position: 'asc' } })
  desk.setNow(iso(steps[0]!.startAt))
  await arrive(desk, { id, version: await version() })
  for (const { kind, position, startAt, endAt } of steps) {
    if (kind !== 'work') continue
    desk.setNow(iso(startAt))
    await startStep(desk, { id, version: await version(), position, reason: 'no reading yet' })
    desk.setNow(iso(endAt))
    await finishStep(desk, { id, version: await version(), position })
  }
  desk.setNow(iso((await getJob(desk, { id })).handoverAt))
  await handOver(desk, { id, version: await version() })
  return id
}

/** Gives an owner an e-mail address and their consent to some channels. */
export async function agree(
  desk: TestDesk,
  vehicleId: string,
  channels: Channel[] = ['email'],
  email = 'owner@example.com',
): Promise<string> {
  const { customer } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: vehicleId },
    include: { customer: true },
  })
  const { id, version, name } = customer
  await saveCustomer(desk, { id, version, name, phone: '(212) 555-0143', email, note: '' })
  if (channels.includes('letter'))
    await saveReach(desk, {
      customerId: id,
      language: null,
      zone: null,
      postal: '12 Larch Row\nAshdown 10001',
      version: 0,
    })
  for (const channel of channels)
    await giveConsent(desk, {
      customerId: id,
      channel,
      source: 'intake form',
      wording: 'You may remind me when my car is due.',
    })
  return id
}
