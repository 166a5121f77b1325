import { beforeEach, expect, it } from 'vitest'
import { productLifeInput } from '../../../main/services/upkeep/inputs.ts'
import { listProductLives, saveProductLife } from '../../../main/services/upkeep/productLives.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('begins with common practice, toppers first, until the shop says otherwise', async () => {
  // Half a year for a topper, a year for a coating: common practice, no source.
  const lives = await listProductLives(desk)
  expect(lives).toMatchObject([
    { productName: 'Ovrel Veil', intervalDays: 182, mark: 'common practice', version: 0 },
    { productName: 'Ovrel Two', intervalDays: 365, mark: 'common practice', version: 0 },
  ])
  const { productName, ...veil } = lives[0]!
  const sheet = { ...veil, intervalDays: 240, mark: 'data sheet' } as const
  expect(await saveProductLife(desk, sheet)).toEqual({ ...sheet, productName, version: 1 })
  await expect(saveProductLife(desk, sheet)).rejects.toMatchObject({ code: 'stale' })
  await saveProductLife(desk, { ...sheet, version: 1, shape: 3 })
  expect((await listProductLives(desk))[0]).toEqual({ ...sheet, productName, shape: 3, version: 2 })
})

it('is asked of coatings and toppers only, and never outside twenty years', async () => {
  const [{ productName: _, ...veil }] = (await listProductLives(desk)) as [
    Awaited<ReturnType<typeof listProductLives>>[0],
  ]
  await expect(saveProductLife(desk, { ...veil, productId: 'none' })).rejects.toMatchObject({
    field: 'productId',
  })
  await expect((async () => saveProductLife(desk, { ...veil, shape: -1 }))()).rejects.toMatchObject({
    field: 'life.shape',
  })
  for (const intervalDays of [0, 1.5, 7_301])
    expect(productLifeInput.safeParse({ ...veil, intervalDays }).success, `${intervalDays}`).toBe(false)
  expect(productLifeInput.safeParse({ ...veil, intervalDays: 7_300 }).success).toBe(true)
})
