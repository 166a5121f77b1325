import { afterAll, beforeAll, expect, it } from 'vitest'
import {
  createToken,
  revokeToken,
  type Sensor,
  sensorOf,
  takeReadings,
} from '../../../main/services/cure/sensors.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let bayId: string
// 12:00 in New York.
beforeAll(async () => {
  desk = await makeDesk('2026-04-15T16:00:00Z')
  shop = await testShop(desk)
  bayId = shop.bays['Bay 3'] ?? ''
})
afterAll(() => desk.close())

const sensorAt = async (name: string): Promise<Sensor> => {
  const { token } = await createToken(desk, { bayId, name })
  const sensor = await sensorOf(desk, token)
  if (!sensor) throw new Error('the token is good')
  return sensor
}
const reading = (time: string, air: number) => ({ time, air, panel: null, humidity: null, dewPoint: null })

it('is known by its token alone, which is not kept, until it is revoked', async () => {
  const { id, token } = await createToken(desk, { bayId, name: ' by the door ' })
  expect(await sensorOf(desk, token)).toMatchObject({ id, bayId, name: 'by the door' })
  expect(await sensorOf(desk, `${token}x`)).toBeNull()
  const row = await desk.store.read.sensorToken.findUniqueOrThrow({ where: { id } })
  expect(JSON.stringify(row)).not.toContain(token)
  expect(row.createdAt).toBe(desk.now())
  await revokeToken(desk, { id })
  expect(await sensorOf(desk, token)).toBeNull()
  await expect(revokeToken(desk, { id })).rejects.toMatchObject({ code: 'missing', field: 'id' })
  await expect(revokeToken(desk, { id: 'none' })).rejects.toMatchObject({ code: 'missing' })
  const lines = await desk.store.read.auditLine.findMany({ where: { act: { startsWith: 'sensor' } } })
  expect(lines.map(({ act, entity, entityId, detail }) => ({ act, entity, entityId, detail }))).toEqual(
    ['sensor added', 'sensor revoked'].map(act => ({
      act,
      entity: 'bay',
      entityId: bayId,
      detail: { sensorId: id, name: 'by the door' },
    })),
  )
})

it('needs a name and a bay, and posts nothing for a bay that is closed for good', async () => {
  await expect((async () => createToken(desk, { bayId, name: ' ' }))()).rejects.toMatchObject({
    field: 'name',
  })
  await expect(createToken(desk, { bayId: 'none', name: 'x' })).rejects.toMatchObject({ field: 'bayId' })
  const { token } = await createToken(desk, { bayId, name: 'ceiling' })
  const archive = (archivedAt: number | null) =>
    desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.bay.update({ where: { id: bayId }, data: { archivedAt } }),
    )
  await archive(5)
  expect(await sensorOf(desk, token)).toBeNull()
  await archive(null)
  expect(await sensorOf(desk, token)).not.toBeNull()
})

it('has its readings kept as its own, in its unit, once each, from two minutes ahead at most', async () => {
  const sensor = await sensorAt('north wall')
  const posted = {
    unit: 'F' as const,
    readings: [
      // 68 °F is 20 °C, by the definition of the scale.
      reading('2026-04-15T15:50:00Z', 68),
      reading('2026-04-15T16:02:00Z', 50),
      reading('2026-04-15T16:03:00Z', 50),
      reading('2026-04-15T15:51:00Z', -500),
    ],
  }
  const first = await takeReadings(desk, sensor, posted)
  expect(first).toMatchObject({ kept: 2, known: 0 })
  expect(first.refused.map(each => each.row)).toEqual([3, 4])
  expect(await takeReadings(desk, sensor, posted)).toMatchObject({ kept: 0, known: 2 })
  const rows = await desk.store.read.reading.findMany({ orderBy: { at: 'asc' } })
  expect(rows.map(({ airC, source, sensorId, bayId }) => [airC, source, sensorId, bayId])).toEqual([
    [expect.closeTo(20, 9), 'sensor', sensor.id, bayId],
    [expect.closeTo(10, 9), 'sensor', sensor.id, bayId],
  ])
})
