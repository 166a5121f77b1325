import { expect, test } from 'vitest'
import { confirmPlace, holdPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { releaseSlots } from '../../../main/services/upkeep/releaseSlots.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('The places a message held are let go, but for the one that was booked and the one that is kept', async () => {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  const shop = await testShop(desk)
  const treatmentIds = [shop.treatments.wash]
  const hold = async (vehicleId: string) => {
    const { soonest } = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds })
    if (!soonest.feasible) throw new Error('no place')
    return holdPlace(desk, { vehicleId, condition: 'good', treatmentIds, plan: soonest.plan })
  }
  const [booked, kept, free] = [
    await hold(shop.vehicles[0]!),
    await hold(shop.vehicles[1]!),
    await hold(shop.vehicles[2]!),
  ]
  await confirmPlace(desk, booked)
  const slots = [booked, kept, free].map(({ jobId }) => ({ jobId }))
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    releaseSlots(tx, { slots }, desk.now(), kept.jobId),
  )
  const status = async ({ jobId }: { jobId: string }) =>
    (await desk.store.read.job.findUniqueOrThrow({ where: { id: jobId } })).status
  expect([await status(booked), await status(kept), await status(free)]).toEqual([
    'booked',
    'held',
    'cancelled',
  ])
  const lines = await desk.store.read.auditLine.findMany({ where: { act: 'released' } })
  expect(lines.map(line => [line.entityId, line.who])).toEqual([[free.jobId, 'reminder']])
})
