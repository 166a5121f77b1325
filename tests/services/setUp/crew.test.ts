import { beforeEach, expect, it } from 'vitest'
import { archiveCrew, listCrew, restoreCrew, saveCrew } from '../../../main/services/setUp/crew.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const names = async (archived = false) => (await listCrew(desk, { archived })).map(member => member.name)

it('lists who is there, and who has left behind them when asked', async () => {
  await archiveCrew(desk, { id: shop.crew.Mika ?? '', version: 1 })
  expect(await names()).toEqual(['Jo', 'Sal'])
  expect(await names(true)).toEqual(['Jo', 'Sal', 'Mika'])
  await restoreCrew(desk, { id: shop.crew.Mika ?? '', version: 2 })
  expect(await names()).toEqual(['Jo', 'Sal', 'Mika'])
})

it('keeps hours of one’s own, and takes them back', async () => {
  const id = shop.crew.Jo ?? ''
  const weekly = [{ weekday: 1, from: 540, to: 780 }]
  const hours = async () => (await listCrew(desk)).find(member => member.id === id)?.weekly
  await saveCrew(desk, { id, version: 1, name: 'Jo', skills: ['polish'], weekly })
  expect(await hours()).toEqual(weekly)
  await saveCrew(desk, { id, version: 2, name: 'Jo', skills: ['polish'], weekly: null })
  expect(await hours()).toBeNull()
})

it('keeps the days of notice of somebody from outside, and refuses less than none', async () => {
  const jo = { id: shop.crew.Jo ?? '', name: 'Jo', skills: ['polish' as const], weekly: null }
  await saveCrew(desk, { ...jo, version: 1, noticeDays: 3 })
  const notice = async () => (await listCrew(desk)).find(member => member.id === jo.id)?.noticeDays
  expect(await notice()).toBe(3)
  await saveCrew(desk, { ...jo, version: 2 })
  expect(await notice()).toBe(3)
  await expect(saveCrew(desk, { ...jo, version: 3, noticeDays: -1 })).rejects.toMatchObject({
    field: 'noticeDays',
  })
})
