import { beforeEach, expect, test } from 'vitest'
import { addReading } from '../../../main/services/cure/readings.ts'
import { jobCure } from '../../../main/services/job/jobCure.ts'
import { saidOf } from '../job/saidOf.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { does, job, layeredCar, setWall, wall } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
let id: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  id = await layeredCar(desk, shop)
  for (const position of [0, 1]) await does(desk, id, position)
})

async function measure(values: { airC: number; panelC: number | null; humidityPercent: number | null }) {
  const { bayId, startAt } = (await job(desk, id)).steps[2]!
  await addReading(desk, { bayId, at: startAt - 10, ...values })
}

const layer = async () => (await jobCure(desk, { id })).layers[0]!

test('In the range, and 3 °C above the dew point, a coat begins without a word, and what was measured is kept', async () => {
  await measure({ airC: 20, panelC: 19, humidityPercent: 50 })
  await does(desk, id, 2)
  const { conditions } = await layer()
  expect(conditions).toContain('Every rule entered for it was met; the data sheet decides.')
  expect(conditions).not.toMatch(/\bsafe\b/i)
})

test('A damp panel warns and wants a reason; the reason is kept, told in the history, and cannot be edited', async () => {
  // At 20 °C and 80 % the dew point is 16.4 °C: a panel of 18 °C is only 1.6 °C above it (ISO 8502-4 asks 3 °C).
  await measure({ airC: 20, panelC: 18, humidityPercent: 80 })
  await expect(does(desk, id, 2)).rejects.toMatchObject({ code: 'conditions', field: 'reason' })
  await expect(does(desk, id, 2)).rejects.toThrow('ISO 8502-4')
  expect(await desk.store.read.conditionCheck.count()).toBe(0)
  await does(desk, id, 2, { reason: 'Panels warmed by lamp just before' })
  const { conditions } = await layer()
  expect(conditions).toContain('Started anyway: Panels warmed by lamp just before.')
  expect(await saidOf(desk, id)).toContainEqual(
    expect.stringContaining('because: Panels warmed by lamp just before'),
  )
  const edit = () =>
    desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.conditionCheck.updateMany({ data: { reason: 'nothing was wrong' } }),
    )
  await expect(edit()).rejects.toThrow()
})

test('Outside the profile’s temperatures each rule not met is named with its source', async () => {
  await measure({ airC: 4, panelC: 4, humidityPercent: 40 })
  await expect(does(desk, id, 2)).rejects.toThrow(
    /The air is 39.2 °F, under the .* of the profile \(common practice\)/,
  )
})

test('A panel nobody measured is a rule not met; a bay nobody measured refuses nothing and says so', async () => {
  await measure({ airC: 20, panelC: null, humidityPercent: 50 })
  await expect(does(desk, id, 2)).rejects.toThrow('The panel was not measured')
  await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.reading.deleteMany())
  await does(desk, id, 2)
  expect((await layer()).conditions).toBe('Not measured in the hour before.')
})

test('A missed recoat window says what the profile of the layer beneath asks', async () => {
  await does(desk, id, 2)
  const { layers } = await jobCure(desk, { id })
  expect(layers[1]).toMatchObject({ verdict: 'met', asks: null })
  // The window closes 240 min after the first layer.
  setWall(desk, '15T15:30')
  expect(wall('15T15:30') - layers[0]!.endAt).toBeGreaterThan(240)
  const late = (await jobCure(desk, { id })).layers[1]!
  expect(late).toMatchObject({
    verdict: 'too late',
    asks: 'Abrade lightly and wipe before the next layer.',
    // Layers of 90 minutes: 138 less the 78 to the last panel's turn, and 330 less 90.
    window: { opensAt: layers[0]!.endAt + 60, closesAt: layers[0]!.endAt + 240 },
  })
})

test('Damp air through the early cure is told with its worst, and moves no time', async () => {
  await does(desk, id, 2)
  const { layers } = await jobCure(desk, { id })
  const { endAt, air } = layers[0]!
  expect(air).toEqual([])
  setWall(desk, '15T18:00')
  const before = (await job(desk, id)).safeAt
  const { bayId } = (await job(desk, id)).steps[2]!
  for (const [after, humidityPercent] of [
    [30, 60],
    [60, 71],
    [90, 78],
  ] as const)
    await addReading(desk, { bayId, at: endAt + after, airC: 20, panelC: null, humidityPercent })
  const [told] = (await jobCure(desk, { id })).layers[0]!.air
  // 40 to 65 % is common practice, no source.
  expect(told).toContain('the humidity was up to 78 %, over the 65 % of the profile (common practice)')
  expect(told).toContain('No time is moved by it')
  expect((await job(desk, id)).safeAt).toBe(before)
})
