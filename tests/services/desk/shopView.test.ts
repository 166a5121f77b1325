import { beforeEach, expect, it } from 'vitest'
import { calendarOf, findShop, shopOf } from '../../../main/services/desk/shopView.ts'
import { saveException } from '../../../main/services/setUp/hours.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('gives the shop as it was set up, with its weekly hours read', async () => {
  const found = await shopOf(desk.store.read)
  expect(found).toMatchObject({
    name: 'Ashdown Paint Care',
    zone: 'America/New_York',
    demo: false,
    version: 1,
  })
  expect(found.weekly).toHaveLength(6)
})

it('knows no shop in an empty database, and says to set one up', async () => {
  const empty = await makeDesk()
  expect(await findShop(empty.store.read)).toBeNull()
  await expect(shopOf(empty.store.read)).rejects.toMatchObject({ code: 'missing', field: 'shop' })
  await empty.close()
})

it('puts the dates that differ into the calendar, in order', async () => {
  await saveException(desk, { date: '2026-12-24', hours: [{ from: 480, to: 720 }], note: '' })
  await saveException(desk, { date: '2026-05-01', hours: [], note: '' })
  expect((await calendarOf(desk.store.read)).exceptions).toEqual([
    { date: '2026-05-01', hours: [] },
    { date: '2026-12-24', hours: [{ from: 480, to: 720 }] },
  ])
})
