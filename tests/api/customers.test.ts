import { beforeEach, describe, expect, test } from 'vitest'
import { type TestShop, testShop } from '../services/testShop.ts'
import { bookOne } from './bookOne.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop

beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
})

const find = async (text: string, more: object = {}) =>
  (await api.query('customers.find', { text, ...more })).data.customers.map(
    (customer: { name: string }) => customer.name,
  )
const idOf = async (name: string) => (await api.query('customers.find', { text: name })).data.customers[0].id

describe('finding', () => {
  beforeEach(async () => {
    const { data } = await api.mutate('customers.save', {
      name: 'Zoë Ångström-Núñez',
      phone: '+44 20 7946 0958',
      email: 'zoe@example.com',
    })
    await api.mutate('vehicles.save', {
      customerId: data.id,
      plate: 'oi 0l-1',
      make: 'Quillan',
      model: 'Perrowin',
      colour: 'sea green',
      sizeClass: 'small',
      finish: 'gloss',
      note: '',
    })
  })

  test.each([
    ['the whole name', 'Zoë Ångström-Núñez'],
    ['a part without accents and capitals', 'angstrom'],
    ['two parts in the other order', 'nunez zoe'],
    ['the plate without its spaces', 'OI0L1'],
    ['the plate misread', '01 OL I'],
    ['a part of the plate', 'ol1'],
    ['the phone as it is dialled at home', '020 7946 0958'],
    ['its last digits', '0958'],
    ['the international number', '+442079460958'],
    ['the address', 'zoe@example'],
    ['the car', 'sea green perrowin'],
  ])('by %s', async (_, text) => {
    expect(await find(text)).toEqual(['Zoë Ångström-Núñez'])
  })

  test('lists everybody by name without text, as many as asked for, and counts all', async () => {
    expect(await find('')).toEqual([
      'Hana Okoro',
      'Ines Vale',
      'Rowan Ashdown',
      'Toma Birk',
      'Zoë Ångström-Núñez',
    ])
    expect((await api.query('customers.find', { text: '', limit: 2 })).data).toMatchObject({
      customers: [{ name: 'Hana Okoro' }, { name: 'Ines Vale' }],
      total: 5,
    })
  })

  test('sees what was saved a moment ago, and no car that was archived', async () => {
    expect(await find('perrin')).toEqual([])
    const { data } = await api.mutate('customers.save', { name: 'Perrin' })
    expect(await find('perrin')).toEqual(['Perrin'])
    await api.mutate('customers.save', { id: data.id, version: 1, name: 'Marchetti' })
    expect(await find('perrin')).toEqual([])
    await api.mutate('vehicles.archive', { id: shop.vehicles[0], version: 1 })
    expect(await find('kfr204')).toEqual([])
  })

  test('finds archived customers only when asked to', async () => {
    await api.mutate('customers.archive', { id: await idOf('Ines Vale'), version: 1 })
    expect(await find('ines')).toEqual([])
    expect(await find('ines', { archived: true })).toEqual(['Ines Vale'])
  })
})

test('a phone number is read in the shop’s country, or in the one it names', async () => {
  for (const [typed, e164] of [
    ['212 555 0142', '+12125550142'],
    ['+49 30 23125 123', '+493023125123'],
  ]) {
    const { data } = await api.mutate('customers.save', { name: 'Somebody', phone: typed })
    expect((await api.query('customers.get', { id: data.id })).data.phone).toBe(e164)
  }
})

test.each([
  ['no name', { name: '' }, 'name'],
  ['a phone number that is none', { phone: 'call me' }, 'phone'],
  ['a phone number too short', { phone: '12' }, 'phone'],
  ['an address without its domain', { email: 'zoe@' }, 'email'],
])('a customer with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('customers.save', { name: 'Zoë', ...change })
  expect(answer).toMatchObject({ status: 400, fault: { field } })
  expect(await find('')).toHaveLength(4)
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const id = await idOf('Ines Vale')
  await api.mutate('customers.save', { id, version: 1, name: 'Ines Vale-Birk' })
  const second = await api.mutate('customers.save', { id, version: 1, name: 'Ines V' })
  expect(second).toMatchObject({ status: 409, fault: { reason: 'stale' } })
})

test('the page lists cars and visits, newest first, with what they cost', async () => {
  const first = await bookOne(api, shop, 'wash')
  await api.mutate('jobs.cancel', { id: first.id, version: first.version, reason: 'ill' })
  const second = await bookOne(api, shop, 'twoLayers')
  const page = (await api.query('customers.get', { id: second.customer.id })).data
  expect(page.vehicles.map((car: { plate: string }) => car.plate)).toEqual(['KFR 204'])
  expect(page.visits).toHaveLength(2)
  expect(page.visits).toContainEqual(
    expect.objectContaining({
      number: second.number,
      status: 'booked',
      treatments: ['Two layers'],
      priceMinor: 129_900,
      handoverAt: second.handoverAt,
    }),
  )
  expect(page.visits).toContainEqual(expect.objectContaining({ number: first.number, status: 'cancelled' }))
})

test('nobody by that id is said so', async () => {
  expect(await api.query('customers.get', { id: 'nobody' })).toMatchObject({ status: 404 })
})

test('a customer with a car booked is not put away, and the job is named', async () => {
  const job = await bookOne(api, shop, 'wash')
  const refused = await api.mutate('customers.archive', { id: job.customer.id, version: 1 })
  expect(refused).toMatchObject({ status: 400, fault: { reason: 'customer-booked' } })
  expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
  await api.mutate('jobs.cancel', { id: job.id, version: job.version, reason: 'ill' })
  expect((await api.mutate('customers.archive', { id: job.customer.id, version: 1 })).status).toBe(200)
  expect((await api.mutate('customers.restore', { id: job.customer.id, version: 2 })).status).toBe(200)
})
