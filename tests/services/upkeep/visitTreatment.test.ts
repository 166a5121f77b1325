import { afterAll, beforeAll, expect, it } from 'vitest'
import { upkeepRules } from '../../../main/services/upkeep/settings.ts'
import { handsOn, treatmentFor } from '../../../main/services/upkeep/visitTreatment.ts'
import type { Tx } from '../../../main/store/store.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeAll(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})
afterAll(() => desk.close())

type Kind = Parameters<typeof treatmentFor>[2]
const write = (work: (tx: Tx) => Promise<unknown>) =>
  desk.store.transact({ who: 'test', at: desk.now() }, work)
const found = async (kind: Kind, treatments: Partial<Record<Kind, string>> = {}) =>
  (await treatmentFor(desk.store.read, { ...(await upkeepRules(desk.store.read)), treatments }, kind)).id
const archive = (id: string, archivedAt: number | null) =>
  write(tx => tx.treatment.update({ where: { id }, data: { archivedAt } }))

it('is the shortest sold that lays nothing, or what the shop chose as long as it is sold', async () => {
  expect(await found('inspection')).toBe(shop.treatments.wash)
  expect(await found('inspection', { inspection: shop.treatments.correction })).toBe(
    shop.treatments.correction,
  )
  expect(await found('inspection', { other: shop.treatments.correction })).toBe(shop.treatments.wash)
  await archive(shop.treatments.correction, 5)
  expect(await found('inspection', { inspection: shop.treatments.correction })).toBe(shop.treatments.wash)
  await archive(shop.treatments.correction, null)
  await archive(shop.treatments.wash, 5)
  expect(await found('inspection')).toBe(shop.treatments.correction)
  await archive(shop.treatments.wash, null)
})

it('of a topper lays a topper and no coating, and is refused where none is sold', async () => {
  await expect(found('topper')).rejects.toMatchObject({
    code: 'treatment-missing',
    field: 'treatments',
    message: expect.stringContaining('lays a topper alone'),
  })
  await write(tx =>
    tx.treatmentStep.deleteMany({ where: { treatmentId: shop.treatments.topped, stage: 'coat' } }),
  )
  expect(await found('topper')).toBe(shop.treatments.topped)
  expect(await found('inspection')).toBe(shop.treatments.wash)
})

it('is refused for any other visit where all that is sold lays something', async () => {
  await archive(shop.treatments.wash, 5)
  await archive(shop.treatments.correction, 5)
  await expect(found('inspection')).rejects.toMatchObject({
    code: 'treatment-missing',
    message: expect.stringContaining('choose one in the upkeep rules'),
  })
})

it('counts the hands-on minutes of a middling car', () => {
  expect(handsOn([])).toBe(0)
  expect(
    handsOn([{ minutes: { small: 1, medium: 60, large: 90, xl: 120 } }, { minutes: { medium: 45 } }]),
  ).toBe(105)
  expect(handsOn([{ minutes: {} }])).toBe(0)
})
