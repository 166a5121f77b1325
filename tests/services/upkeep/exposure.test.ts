import { beforeEach, expect, it } from 'vitest'
import { exposureOf, saveExposure, scaled } from '../../../main/services/upkeep/exposure.ts'
import { getUpkeepSettings } from '../../../main/services/upkeep/settings.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let vehicleId: string
beforeEach(async () => {
  desk = await makeDesk()
  vehicleId = (await testShop(desk)).vehicles[0]!
})

it('is kept for each car, and refused to the second of two windows', async () => {
  expect(await exposureOf(desk.store.read, vehicleId)).toEqual({ choices: {}, version: 0 })
  expect(await saveExposure(desk, { vehicleId, choices: { kept: 'outside' }, version: 0 })).toEqual({
    version: 1,
  })
  expect(await saveExposure(desk, { vehicleId, choices: { kept: 'garage' }, version: 1 })).toEqual({
    version: 2,
  })
  await expect(saveExposure(desk, { vehicleId, choices: {}, version: 1 })).rejects.toMatchObject({
    code: 'stale',
  })
  await expect(saveExposure(desk, { vehicleId, choices: {}, version: 0 })).rejects.toMatchObject({
    code: 'stale',
  })
  expect(await exposureOf(desk.store.read, vehicleId)).toEqual({ choices: { kept: 'garage' }, version: 2 })
})

it('is refused for a car that is not on file, and for a choice that is none', async () => {
  await expect(saveExposure(desk, { vehicleId: 'none', choices: {}, version: 0 })).rejects.toMatchObject({
    code: 'missing',
    field: 'vehicleId',
  })
  await expect(
    saveExposure(desk, { vehicleId, choices: { kept: 'boat' }, version: 0 }),
  ).rejects.toMatchObject({ field: 'exposure.kept' })
})

it('shortens the interval outside, and counts a choice the shop has dropped since as not made', async () => {
  const rules = await getUpkeepSettings(desk)
  const ordinary = scaled(180, {}, rules)
  expect(ordinary.days).toBe(180)
  const outside = scaled(180, { kept: 'outside' }, rules)
  expect(outside.days).toBeLessThan(180)
  expect(scaled(180, { kept: 'outside', kite: 'flown', wash: 'never heard of' }, rules)).toEqual(outside)
  expect(scaled(180, { kept: 'outside' }, { ...rules, factors: [] })).toEqual({ ...ordinary, steps: [] })
})
