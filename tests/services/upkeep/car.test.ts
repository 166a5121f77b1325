import { beforeEach, describe, expect, it } from 'vitest'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { undoAct } from '../../../main/services/upkeep/acts.ts'
import { acceptCarProposal, carUpkeep } from '../../../main/services/upkeep/car.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { saveExposure } from '../../../main/services/upkeep/exposure.ts'
import { inspect, voidInspection } from '../../../main/services/upkeep/inspect.ts'
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

describe('what inspections and exposure say', () => {
  beforeEach(() => carryOut(desk, shop, { treatments: ['topped'] }).then(() => {}))

  it('never moves a due day by itself, but by a proposal the desk accepts', async () => {
    const vehicleId = shop.vehicles[0]!
    const before = await topper()
    const car = await carUpkeep(desk, { vehicleId })
    expect(car.proposals).toEqual([])
    await saveExposure(desk, { vehicleId, choices: { kept: 'outside' }, version: 0 })
    desk.setNow('2026-08-20T12:00:00Z')
    await inspect(desk, {
      layerId: car.layers[0]!.id,
      panels: [{ panel: 'roof', before: 'none', after: 'none' }],
      note: 'beading gone on the bonnet',
    })
    expect((await topper()).dueOn).toBe(before.dueOn)
    const after = await carUpkeep(desk, { vehicleId })
    expect(after.life).toMatchObject({ lives: 1, ended: 1 })
    const visit = after.proposals.find(each => each.what === 'next-visit')!
    expect(visit).toMatchObject({ toOn: '2026-08-20', fromOn: before.dueOn })
    const { actId } = await acceptCarProposal(desk, visit)
    expect((await topper()).dueOn).toBe('2026-08-20')
    await undoAct(desk, { actId })
    expect((await topper()).dueOn).toBe(before.dueOn)
    const interval = after.proposals.find(each => each.what === 'interval')!
    await acceptCarProposal(desk, interval)
    expect((await topper()).dueOn).toBe(interval.toOn)
    await expect(acceptCarProposal(desk, { ...interval, toOn: '2030-01-01' })).rejects.toMatchObject({
      code: 'stale',
    })
  })

  it('puts a visit off by two looks alone: one look at a topper that seems to work proposes nothing', async () => {
    const vehicleId = shop.vehicles[0]!
    const { dueOn } = await topper()
    const { layers } = await carUpkeep(desk, { vehicleId })
    desk.setNow(`${Temporal.PlainDate.from(dueOn).subtract({ days: 2 })}T15:00:00Z`)
    const look = async (before: 'strong' | 'none', after: 'strong' | null) => {
      const { id } = await inspect(desk, {
        layerId: layers[0]!.id,
        panels: [{ panel: 'roof', before, after }],
      })
      const { proposals } = await carUpkeep(desk, { vehicleId })
      await voidInspection(desk, { id })
      return proposals.filter(each => each.what === 'next-visit')
    }
    expect(await look('strong', null)).toEqual([])
    const [later] = await look('strong', 'strong')
    expect(later!.toOn > dueOn).toBe(true)
    // A single look that found it gone brings the visit forward all the same.
    expect(await look('none', null)).toMatchObject([
      { fromOn: dueOn, toOn: dateOf(desk.now(), 'America/New_York') },
    ])
  })

  it('is refused where it contradicts an earlier look', async () => {
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    const layerId = car.layers[0]!.id
    desk.setNow('2026-09-20T12:00:00Z')
    await inspect(desk, {
      layerId,
      panels: [{ panel: 'roof', before: 'none', after: 'none' }],
      on: '2026-08-01',
    })
    await expect(
      inspect(desk, {
        layerId,
        panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
        on: '2026-09-01',
      }),
    ).rejects.toMatchObject({
      code: 'working-after-gone',
    })
    await expect(
      inspect(desk, {
        layerId,
        panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
        on: '2026-01-01',
      }),
    ).rejects.toMatchObject({
      field: 'on',
    })
  })
})
