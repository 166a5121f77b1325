import { beforeEach, describe, expect, test } from 'vitest'
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

const closed = { date: '2026-05-25', hours: [], note: 'Memorial Day' }

test('a date gets hours of its own, changes and goes back to its weekday', async () => {
  const { data } = await api.mutate('hours.saveException', closed)
  expect((await api.query('hours.exceptions')).data).toEqual([{ ...closed, id: data.id, version: 1 }])
  const hours = [{ from: 540, to: 720 }]
  await api.mutate('hours.saveException', { ...closed, id: data.id, version: 1, hours })
  expect((await api.query('hours.exceptions')).data).toMatchObject([{ hours, version: 2 }])
  expect((await api.mutate('hours.removeException', { id: data.id, version: 2 })).status).toBe(200)
  expect((await api.query('hours.exceptions')).data).toEqual([])
  const kept = await api.desk.store.read.auditLine.findFirst({ where: { entity: 'hours', act: 'removed' } })
  expect(kept?.detail).toMatchObject({ date: [null, '2026-05-25'], hours: [null, hours] })
})

test.each([
  ['a date that is none', { date: '2026-02-30' }, 'date'],
  ['closing before opening', { hours: [{ from: 600, to: 540 }] }, 'hours.0.to'],
  ['a time of day past midnight', { hours: [{ from: 600, to: 1500 }] }, 'hours.0.to'],
  [
    'overlapping openings',
    {
      hours: [
        { from: 480, to: 720 },
        { from: 700, to: 900 },
      ],
    },
    'hours.1.from',
  ],
])('%s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('hours.saveException', { ...closed, ...change })
  expect(answer).toMatchObject({ status: 400, fault: { field } })
  expect((await api.query('hours.exceptions')).data).toEqual([])
})

test('a second entry of one date is refused', async () => {
  await api.mutate('hours.saveException', closed)
  const twice = await api.mutate('hours.saveException', { ...closed, note: 'again' })
  expect(twice).toMatchObject({ status: 400, fault: { reason: 'date-twice', field: 'date' } })
})

test('an edit of what another window has changed or removed is told so', async () => {
  const { data } = await api.mutate('hours.saveException', closed)
  const edit = { ...closed, id: data.id, version: 1 }
  await api.mutate('hours.saveException', { ...edit, note: 'first' })
  const second = await api.mutate('hours.saveException', { ...edit, note: 'second' })
  expect(second).toMatchObject({ status: 409, fault: { reason: 'stale' } })
  expect((await api.mutate('hours.removeException', { id: data.id, version: 1 })).status).toBe(409)
  await api.mutate('hours.removeException', { id: data.id, version: 2 })
  expect((await api.mutate('hours.saveException', { ...edit, version: 2 })).status).toBe(409)
})

describe('with a car booked today', () => {
  const today = { date: '2026-04-15', hours: [], note: 'storm' }

  test('closing the day names the job, keeps nothing, and goes through once accepted', async () => {
    const job = await bookOne(api, shop, 'twoLayers')
    const refused = await api.mutate('hours.saveException', today)
    expect(refused).toMatchObject({ status: 400, fault: { reason: 'touches-bookings', field: 'hours' } })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
    expect((await api.query('hours.exceptions')).data).toEqual([])
    expect((await api.mutate('hours.saveException', { ...today, accepted: true })).status).toBe(200)
    expect((await api.query('hours.exceptions')).data).toHaveLength(1)
  })

  test('what was outside before is no news to the next change', async () => {
    await bookOne(api, shop, 'wash')
    await api.mutate('hours.saveException', { ...today, accepted: true })
    expect((await api.mutate('hours.saveException', closed)).status).toBe(200)
  })

  test('a shorter week or another zone names the job too', async () => {
    const job = await bookOne(api, shop, 'wash')
    const { demo: _, ...now } = (await api.query('shop.get')).data
    const noWednesday = now.weekly.filter((hours: { weekday: number }) => hours.weekday !== 3)
    for (const change of [{ weekly: noWednesday }, { zone: 'Asia/Tokyo' }]) {
      const refused = await api.mutate('shop.update', { ...now, ...change })
      expect(refused).toMatchObject({
        status: 400,
        fault: { reason: 'touches-bookings', field: Object.keys(change)[0] },
      })
      expect(refused.message).toContain(`Job ${job.number} `)
    }
    expect((await api.query('shop.get')).data).toMatchObject({ version: 1, zone: 'America/New_York' })
    expect((await api.mutate('shop.update', { ...now, weekly: noWednesday, accepted: true })).status).toBe(
      200,
    )
  })

  test('longer hours touch nothing', async () => {
    await bookOne(api, shop, 'correction')
    const { demo: _, ...now } = (await api.query('shop.get')).data
    const weekly = now.weekly.map((hours: object) => ({ ...hours, from: 420, to: 1200 }))
    expect((await api.mutate('shop.update', { ...now, weekly })).status).toBe(200)
  })

  test('the currency stays once a job is priced in it', async () => {
    await bookOne(api, shop, 'wash')
    const { demo: _, ...now } = (await api.query('shop.get')).data
    const refused = await api.mutate('shop.update', { ...now, currency: 'EUR' })
    expect(refused).toMatchObject({ status: 400, fault: { reason: 'currency-in-use', field: 'currency' } })
  })
})
