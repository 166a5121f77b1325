import { beforeEach, expect, test } from 'vitest'
import { jobRows } from '../../../main/services/floor/jobRows.ts'
import { laidAnew } from '../../../main/services/floor/laidAnew.ts'
import { loadFloor } from '../../../main/services/floor/loadFloor.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let id: string

// Wednesday 15 April 2026, 08:00 in New York; a wash comes on Thursday.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const booked = await bookJob(desk, shop, {
    treatments: ['wash'],
    kind: 'askedDay',
    askedDate: '2026-04-16',
  })
  id = booked.id
})

async function longer(moreMin: number, closed: boolean) {
  const read = desk.store.read
  const floor = await loadFloor(read, desk.now(), desk.now() + 7 * 1440)
  const [job] = await jobRows(read, floor, { id })
  const [step, ...rest] = job!.steps
  const shut = { fromAt: floor.nowAt, toAt: floor.toAt, reason: 'Flooded' }
  const bays = closed ? floor.bays.map(bay => ({ ...bay, closures: [shut] })) : floor.bays
  const row = { ...job!, steps: [{ ...step!, minutes: step!.minutes + moreMin }, ...rest] }
  return { before: job!, after: await laidAnew(read, { ...floor, bays }, row, 0) }
}

test('a longer step gets the soonest place in which it fits', async () => {
  const { before, after } = await longer(60, false)
  expect(after.steps[0]!.endAt - after.steps[0]!.startAt).toBe(before.steps[0]!.minutes + 60)
  expect(after.handoverAt).toBeGreaterThanOrEqual(after.steps[0]!.endAt)
})

test('where there is no place at all it runs on where it is, as long as it now takes', async () => {
  const { before, after } = await longer(60, true)
  const [was, is] = [before.steps[0]!, after.steps[0]!]
  expect([is.bayId, is.startAt]).toEqual([was.bayId, was.startAt])
  expect(is.endAt).toBe(was.endAt + 60)
  expect(after.handoverAt).toBeGreaterThanOrEqual(before.handoverAt + 60)
  expect(after.leavesAt).toBe(after.handoverAt)
})
