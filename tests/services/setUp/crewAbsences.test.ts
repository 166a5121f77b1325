import { beforeEach, expect, it } from 'vitest'
import { listCrew } from '../../../main/services/setUp/crew.ts'
import { removeAbsence, saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

it('is noted once for a time, for each of the crew, and taken out again', async () => {
  const fromAt = desk.now() + 1440
  const absence = { crewId: shop.crew.Jo ?? '', fromAt, toAt: fromAt + 600, reason: 'course' }
  const { id } = await saveAbsence(desk, absence)
  await expect(saveAbsence(desk, { ...absence, toAt: fromAt + 60 })).rejects.toMatchObject({
    field: 'fromAt',
  })
  await saveAbsence(desk, { ...absence, crewId: shop.crew.Sal ?? '' })
  const away = async () =>
    (await listCrew(desk)).filter(each => each.absences.length > 0).map(each => each.name)
  expect(await away()).toEqual(['Jo', 'Sal'])
  await removeAbsence(desk, { id, version: 1 })
  expect(await away()).toEqual(['Sal'])
})
