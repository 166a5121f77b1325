import { beforeEach, expect, it } from 'vitest'
import { listExceptions, removeException, saveException } from '../../../main/services/setUp/hours.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('gives a date hours of its own once, lists them in order, and gives it its weekday’s again', async () => {
  const day = { date: '2026-12-24', hours: [{ from: 480, to: 720 }], note: 'half a day' }
  const { id } = await saveException(desk, day)
  await saveException(desk, { date: '2026-05-01', hours: [], note: '' })
  expect((await listExceptions(desk)).map(each => each.date)).toEqual(['2026-05-01', '2026-12-24'])
  await expect(saveException(desk, day)).rejects.toMatchObject({ code: 'date-twice', field: 'date' })
  await removeException(desk, { id, version: 1 })
  expect((await listExceptions(desk)).map(each => each.date)).toEqual(['2026-05-01'])
})

it('names a fault of the hours as the form sent them', async () => {
  const backwards = { date: '2026-05-02', hours: [{ from: 720, to: 480 }], note: '' }
  await expect(async () => saveException(desk, backwards)).rejects.toMatchObject({
    field: expect.stringMatching(/^hours\.0/),
  })
})
