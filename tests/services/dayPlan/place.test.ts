import { beforeEach, expect, test } from 'vitest'
import { planOf } from '../../../main/domain/floor/index.ts'
import type { FloorPlan } from '../../../main/domain/schedule/index.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { placeTogether } from '../../../main/services/dayPlan/place.ts'
import { act } from '../../../main/services/desk/desk.ts'
import { jobRows } from '../../../main/services/floor/jobRows.ts'
import { loadFloor } from '../../../main/services/floor/loadFloor.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { lend } from '../../../main/services/job/lending.ts'
import { saveLendable } from '../../../main/services/setUp/lendables.ts'
import { bookJob } from '../bookJob.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let ids: [string, string]

// Wednesday 15 April 2026, 08:00 in New York. Two washes, one after the other, and one loan car for both.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await saveLendable(desk, { name: 'Blue loan car', kind: 'loan car' })
  const book = async (vehicle: number) => {
    const { id, version } = await bookJob(desk, shop, {
      treatments: ['wash'],
      vehicle,
      kind: 'askedDay',
      askedDate: '2026-04-16',
    })
    await lend(desk, { id, version, kind: 'loan car', on: true })
    return id
  }
  ids = [await book(0), await book(1)]
})

/** Puts cars at new places, in one act. */
function placed(plan: FloorPlan) {
  return act(desk, async (tx, audit, at) => {
    const floor = await loadFloor(tx, at, at + 7 * 1440)
    const rows = await jobRows(tx, floor, { id: { in: Object.keys(plan) } })
    await placeTogether(tx, audit, floor, rows, plan)
  })
}

async function planNow(id: string) {
  const floor = await loadFloor(desk.store.read, desk.now(), desk.now() + 7 * 1440)
  const [row] = await jobRows(desk.store.read, floor, { id })
  return planOf(row!)
}

const timesOf = async (id: string) => {
  const { dropOffAt, handoverAt } = await getJob(desk, { id })
  return [dropOffAt, handoverAt]
}

test('two cars change their times, and the loan car goes with each at its new one', async () => {
  const [first, second] = ids
  const [early, late] = [await timesOf(first), await timesOf(second)]
  expect(early[1]).toBeLessThanOrEqual(late[0]!)
  await placed({ [first]: await planNow(second), [second]: await planNow(first) })
  expect([await timesOf(first), await timesOf(second)]).toEqual([late, early])
  expect((await getJob(desk, { id: first })).lent).toMatchObject([{ name: 'Blue loan car' }])
  expect(await brokenLaws(desk)).toEqual([])
})

test('a car is not put where what it borrows is with another; the words say what to do, and nothing is saved', async () => {
  const [first] = ids
  const before = await timesOf(first)
  const day = { kind: 'askedDay', askedDate: '2026-04-17' } as const
  const long = await bookJob(desk, shop, { treatments: ['topped'], vehicle: 2, ...day })
  await lend(desk, { id: long.id, version: long.version, kind: 'loan car', on: true })
  // A place with room for everything but what is lent.
  const treatmentIds = [shop.treatments.wash]
  const { askedDay } = await offers(desk, {
    sizeClass: 'medium',
    condition: 'good',
    treatmentIds,
    askedDate: day.askedDate,
  })
  if (!askedDay.feasible) throw new Error(askedDay.reasons.join(' '))
  expect(askedDay.dropOffAt).toBeLessThan(long.handoverAt)
  await expect(placed({ [first]: askedDay.plan })).rejects.toThrow(
    /Blue loan car is lent with job \d+.*Accept the proposal without .*, or take back what it borrows\./,
  )
  expect(await timesOf(first)).toEqual(before)
})
