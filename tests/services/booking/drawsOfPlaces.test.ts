import { beforeEach, expect, it } from 'vitest'
import { confirmPlace, holdPlace, releasePlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop } from '../shelf/shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

async function hold(vehicle: number) {
  const treatmentIds = [shop.treatments.twoLayers]
  const { soonest } = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds })
  if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
  const vehicleId = shop.vehicles[vehicle]!
  return holdPlace(desk, { vehicleId, condition: 'good', treatmentIds, plan: soonest.plan })
}

const drawsOf = ({ jobId }: { jobId: string }) => desk.store.read.stepDraw.findMany({ where: { jobId } })

it('go when the place is let go or its booking cancelled', async () => {
  const held = await hold(0)
  expect(await drawsOf(held)).not.toEqual([])
  await releasePlace(desk, held)
  expect(await drawsOf(held)).toEqual([])
  const other = await hold(0)
  const { version } = await confirmPlace(desk, other)
  expect(await drawsOf(other)).not.toEqual([])
  await cancelJob(desk, { id: other.jobId, version, reason: 'sold' })
  expect(await drawsOf(other)).toEqual([])
})

it('go when the hold runs out, and come again where it is confirmed after all', async () => {
  const held = await hold(0)
  const before = await drawsOf(held)
  desk.setNow('2026-04-15T12:40:00Z')
  // The next hold writes down that the first has run out, and leaves its place free again.
  await releasePlace(desk, await hold(1))
  expect(await drawsOf(held)).toEqual([])
  await confirmPlace(desk, held)
  expect(await drawsOf(held)).toEqual(before)
})
