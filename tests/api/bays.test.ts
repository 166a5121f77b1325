import { beforeEach, describe, expect, test } from 'vitest'
import { atWall } from '../../main/domain/calendar/index.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { bookOne } from './bookOne.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop

// Wednesday 15 April 2026, 08:10 in New York.
beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
})

const at = (date: string, hour: number) => atWall(date, hour * 60, 'America/New_York')
const bays = async (input?: object) => (await api.query('bays.list', input)).data
const names = async () => (await bays()).map((bay: { name: string }) => bay.name)

test('a bay is added last, renamed, ordered, put away and taken back', async () => {
  const { data } = await api.mutate('bays.save', { name: ' Bay  5 ', capabilities: ['wet'] })
  expect(await names()).toEqual(['Bay 1', 'Bay 2', 'Bay 3', 'Bay 4', 'Bay 5'])
  await api.mutate('bays.save', { id: data.id, version: 1, name: 'Annexe', capabilities: ['wet', 'cure'] })
  const ids = (await bays()).map((bay: { id: string }) => bay.id)
  await api.mutate('bays.order', { ids: [ids[4], ...ids.slice(0, 4)] })
  expect((await names())[0]).toBe('Annexe')
  await api.mutate('bays.archive', { id: data.id, version: 2 })
  expect(await names()).not.toContain('Annexe')
  expect((await bays({ archived: true })).at(-1)).toMatchObject({ name: 'Annexe', version: 3 })
  await api.mutate('bays.restore', { id: data.id, version: 3 })
  expect((await names()).at(-1)).toBe('Annexe')
})

test.each([
  ['no name', { name: ' ', capabilities: ['wet'] }, 'name'],
  ['no use', { name: 'Bay 9', capabilities: [] }, 'capabilities'],
  ['a use nobody knows', { name: 'Bay 9', capabilities: ['fly'] }, 'capabilities.0'],
  ['a name another bay bears', { name: 'bay 2', capabilities: ['wet'] }, 'name'],
])('a bay with %s is refused with the field named, and nothing is kept', async (_, input, field) => {
  expect(await api.mutate('bays.save', input)).toMatchObject({ status: 400, fault: { field } })
  expect(await bays({ archived: true })).toHaveLength(4)
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const edit = { id: shop.bays['Bay 1'], version: 1, capabilities: ['wet'] }
  await api.mutate('bays.save', { ...edit, name: 'First' })
  expect((await api.mutate('bays.save', { ...edit, name: 'Second' })).status).toBe(409)
  expect((await api.mutate('bays.archive', { id: edit.id, version: 1 })).status).toBe(409)
  expect((await names())[0]).toBe('First')
})

test('an order that leaves one out or names one twice is refused', async () => {
  const ids = Object.values(shop.bays)
  for (const wrong of [ids.slice(1), [...ids.slice(1), ids[1]], [...ids.slice(1), 'nobody']])
    expect((await api.mutate('bays.order', { ids: wrong })).status).toBe(409)
})

test('the last bay is not put away', async () => {
  for (const id of Object.values(shop.bays).slice(1)) await api.mutate('bays.archive', { id, version: 1 })
  const last = await api.mutate('bays.archive', { id: Object.values(shop.bays)[0], version: 1 })
  expect(last).toMatchObject({ status: 400, fault: { reason: 'bay-last' } })
})

describe('a closure', () => {
  const closure = (change: object = {}) => ({
    bayId: shop.bays['Bay 2'],
    fromAt: at('2026-04-20', 8),
    toAt: at('2026-04-21', 8),
    reason: 'floor painted',
    ...change,
  })

  test('is kept, changed and removed, and listed until it is over', async () => {
    const { data } = await api.mutate('bays.saveClosure', closure())
    expect((await bays())[1].closures).toMatchObject([{ id: data.id, reason: 'floor painted', version: 1 }])
    await api.mutate('bays.saveClosure', closure({ id: data.id, version: 1, toAt: at('2026-04-22', 8) }))
    expect((await bays())[1].closures).toMatchObject([{ toAt: at('2026-04-22', 8), version: 2 }])
    api.desk.setNow('2026-04-22T12:00:00Z')
    expect((await bays())[1].closures).toEqual([])
    expect((await api.mutate('bays.removeClosure', { id: data.id, version: 2 })).status).toBe(200)
  })

  test('that overlaps another of its bay is refused in words of the shop’s clock', async () => {
    await api.mutate('bays.saveClosure', closure())
    const second = await api.mutate('bays.saveClosure', closure({ fromAt: at('2026-04-20', 12) }))
    expect(second).toMatchObject({ status: 400, fault: { reason: 'closure-overlap', field: 'fromAt' } })
    expect(second.message).toContain('Mon, April 20, 2026, 8:00\u00a0am')
    expect((await bays())[1].closures).toHaveLength(1)
    // Another bay, or one that begins as the first ends, is free.
    expect((await api.mutate('bays.saveClosure', closure({ bayId: shop.bays['Bay 3'] }))).status).toBe(200)
    const next = closure({ fromAt: at('2026-04-21', 8), toAt: at('2026-04-21', 9) })
    expect((await api.mutate('bays.saveClosure', next)).status).toBe(200)
  })

  test.each([
    ['that ends before it begins', { toAt: 29_000_000 }, 'toAt'],
    ['that takes no time', { toAt: at('2026-04-20', 8) }, 'toAt'],
    ['that begins at half a minute', { fromAt: 29_610_240.5 }, 'fromAt'],
    ['of a bay that is not there', { bayId: 'nowhere' }, 'bayId'],
  ])('%s is refused with the field named', async (_, change, field) => {
    const answer = await api.mutate('bays.saveClosure', closure(change))
    expect(answer.fault?.field).toBe(field)
    expect(answer.status).toBeGreaterThanOrEqual(400)
    expect((await bays())[1].closures).toEqual([])
  })

  test('edited in two windows is kept once', async () => {
    const { data } = await api.mutate('bays.saveClosure', closure())
    const edit = { id: data.id, version: 1 }
    await api.mutate('bays.saveClosure', closure({ ...edit, reason: 'first' }))
    expect((await api.mutate('bays.saveClosure', closure({ ...edit, reason: 'second' }))).status).toBe(409)
    expect((await api.mutate('bays.removeClosure', edit)).status).toBe(409)
  })
})

describe('with a car booked', () => {
  test('a closure over its stay asks first, naming it; one beside it is kept', async () => {
    const job = await bookOne(api, shop, 'twoLayers')
    const stay = job.stays.at(-1)
    const over = { bayId: stay.bayId, fromAt: stay.toAt - 30, toAt: stay.toAt + 600, reason: '' }
    const refused = await api.mutate('bays.saveClosure', over)
    expect(refused).toMatchObject({ status: 400, fault: { reason: 'touches-bookings', field: 'fromAt' } })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
    expect((await api.mutate('bays.saveClosure', { ...over, fromAt: stay.toAt })).status).toBe(200)
  })

  test('its bay is not put away, and the bookings are named', async () => {
    const job = await bookOne(api, shop, 'twoLayers')
    const refused = await api.mutate('bays.archive', { id: job.stays.at(-1).bayId, version: 1 })
    expect(refused).toMatchObject({ status: 400, fault: { reason: 'bay-booked' } })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
    expect(await bays()).toHaveLength(4)
  })

  test('taking away what its step needs there is told first', async () => {
    const job = await bookOne(api, shop, 'wash')
    const edit = { id: job.stays[0].bayId, version: 1, name: 'Bay 1', capabilities: ['cure'] }
    const refused = await api.mutate('bays.save', edit)
    expect(refused).toMatchObject({
      status: 400,
      fault: { reason: 'touches-bookings', field: 'capabilities' },
    })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204): Wash`)
    expect((await api.mutate('bays.save', { ...edit, accepted: true })).status).toBe(200)
  })

  test('once it has gone home the bay is free again', async () => {
    const job = await bookOne(api, shop, 'wash')
    api.desk.setNow('2026-04-15T20:00:00Z')
    await api.mutate('jobs.cancel', { id: job.id, version: job.version, reason: 'changed their mind' })
    expect((await api.mutate('bays.archive', { id: job.stays[0].bayId, version: 1 })).status).toBe(200)
  })
})
