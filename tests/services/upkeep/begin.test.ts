import { beforeEach, describe, expect, it } from 'vitest'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { carryOut } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const all = { fromDate: '2026-01-01', toDate: '2028-06-30' }
const open = async () => (await dueVisits(desk, all)).visits.filter(visit => !visit.projected)
const topper = async () => (await open()).find(visit => visit.kind === 'topper')!

describe('a coating handed over', () => {
  it('begins the four plans, from the day it left, with the layers that were really laid', async () => {
    await carryOut(desk, shop, { treatments: ['topped'] })
    const visits = await open()
    expect(visits.map(visit => visit.kind).sort()).toEqual(['check-up', 'first-wash', 'inspection', 'topper'])
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    expect(car.layers.map(layer => [layer.stage, layer.productName])).toEqual([
      ['topper', 'Ovrel Veil'],
      ['coat', 'Ovrel Two'],
    ])
    // Half a year for a topper: common practice, no source. 16 April 2026 + 182 days = 15 October 2026.
    expect(car.interval).toMatchObject({ productDays: 182, productMark: 'common practice', days: 182 })
    expect(car.timeline.map(entry => entry.kind)).toEqual(expect.arrayContaining(['coat', 'topper', 'job']))
    const due = visits.find(visit => visit.kind === 'topper')!
    const job = await desk.store.read.job.findFirstOrThrow()
    const leftOn = Temporal.Instant.fromEpochMilliseconds(job.leftAt! * 60_000)
      .toZonedDateTimeISO('America/New_York')
      .toPlainDate()
    const days = leftOn.until(due.ruleOn, { largestUnit: 'days' }).days
    expect(days).toBe(182)
    expect(due.sentence).toContain('counted from the coating')
  })

  it('is not begun by a wash', async () => {
    await carryOut(desk, shop, { treatments: ['wash'] })
    expect(await open()).toEqual([])
  })

  it('begins anew with the next coating: nothing is due twice', async () => {
    await carryOut(desk, shop, { treatments: ['topped'] })
    const first = await topper()
    desk.setNow('2026-07-01T12:00:00Z')
    await carryOut(desk, shop, { treatments: ['topped'] })
    const visits = await open()
    expect(visits).toHaveLength(4)
    expect(visits.find(visit => visit.kind === 'topper')!.dueOn > first.dueOn).toBe(true)
  })
})
