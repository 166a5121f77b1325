import { beforeEach, expect, test } from 'vitest'
import { type TestShop, testShop } from '../services/testShop.ts'
import { bookOne } from './bookOne.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop
let owner: string

beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
  owner = (await api.query('customers.find', { text: 'Ines' })).data.customers[0].id
})

const car = (change: object = {}) => ({
  customerId: owner,
  plate: 'brg 417',
  make: 'Brindle',
  model: 'Hollick',
  colour: 'red',
  year: 2024,
  vin: null,
  sizeClass: 'large',
  finish: 'matte',
  note: '',
  ...change,
})
const cars = async () => (await api.query('customers.get', { id: owner })).data.vehicles

test('a car is added with its plate tidied, changed, put away and taken back', async () => {
  const { data } = await api.mutate('vehicles.save', car())
  expect((await cars()).at(-1)).toMatchObject({ plate: 'BRG 417', year: 2024, finish: 'matte', version: 1 })
  await api.mutate('vehicles.save', car({ id: data.id, version: 1, colour: 'blue' }))
  expect((await cars()).at(-1)).toMatchObject({ colour: 'blue', version: 2 })
  await api.mutate('vehicles.archive', { id: data.id, version: 2 })
  expect((await cars()).at(-1).archivedAt).toBe(api.desk.now())
  await api.mutate('vehicles.restore', { id: data.id, version: 3 })
  expect((await cars()).at(-1).archivedAt).toBeNull()
})

test.each([
  ['a plate of nothing but signs', { plate: '---' }, 'plate'],
  ['a plate another car bears', { plate: 'kfr-204' }, 'plate'],
  ['a year before the motor car', { year: 1700 }, 'year'],
  ['a year far ahead', { year: 2100 }, 'year'],
  ['half a year', { year: 2020.5 }, 'year'],
  ['a VIN too short', { vin: '1M8GDM9AXKP04' }, 'vin'],
  ['a VIN with an O', { vin: '1M8GDM9AXKPO42788' }, 'vin'],
  ['a size nobody knows', { sizeClass: 'huge' }, 'sizeClass'],
  ['a finish nobody knows', { finish: 'velvet' }, 'finish'],
  ['an owner who is not there', { customerId: 'nobody' }, 'customerId'],
])('a car with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('vehicles.save', car(change))
  expect(answer.fault?.field).toBe(field)
  expect(answer.status).toBeGreaterThanOrEqual(400)
  expect(await cars()).toHaveLength(1)
})

// Check digit: 49 CFR 565.15(c); the number is the example of that rule's common reference, from memory.
test('a VIN whose check digit fails is kept with a warning, one that holds without', async () => {
  const right = await api.mutate('vehicles.save', car({ vin: '1m8gdm9axkp042788', year: 2019 }))
  expect(right.data.warning).toBeNull()
  const wrong = await api.mutate('vehicles.save', car({ plate: 'OTH 3R', vin: '1M8GDM9A1KP042788' }))
  expect(wrong.data.warning).toContain('check digit')
  // K is 1989 or 2019: 49 CFR 565.15, table VII.
  const other = await api.mutate('vehicles.save', car({ plate: 'YEA 4R', vin: '1M8GDM9AXKP042788' }))
  expect(other.data.warning).toContain('1989 or 2019')
  expect((await cars()).map((each: { vin: string }) => each.vin)).toContain('1M8GDM9AXKP042788')
})

test('two cars may have no plate yet, and a plate is free again once its car is put away', async () => {
  for (const _ of [1, 2]) expect((await api.mutate('vehicles.save', car({ plate: '' }))).status).toBe(200)
  await api.mutate('vehicles.archive', { id: shop.vehicles[0], version: 1 })
  expect((await api.mutate('vehicles.save', car({ plate: 'KFR 204' }))).status).toBe(200)
  const back = await api.mutate('vehicles.restore', { id: shop.vehicles[0], version: 2 })
  expect(back).toMatchObject({ status: 400, fault: { reason: 'plate-taken', field: 'plate' } })
})

test('a car changes hands by an act of its own, never by an edit', async () => {
  const buyer = (await api.query('customers.find', { text: 'Toma' })).data.customers[0].id
  const [mine] = await cars()
  const { archivedAt: _, ...fields } = mine
  const edited = await api.mutate('vehicles.save', { ...fields, customerId: buyer })
  expect(edited).toMatchObject({ status: 400, fault: { reason: 'owner-changed', field: 'customerId' } })
  const { id: vehicleId, version } = mine
  await api.mutate('vehicles.changeHands', { vehicleId, version, to: { customerId: buyer } })
  expect(await cars()).toEqual([])
  const theirs = (await api.query('customers.get', { id: buyer })).data.vehicles
  expect(theirs.map((each: { plate: string }) => each.plate)).toContain('KFR 204')
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const { data } = await api.mutate('vehicles.save', car())
  const edit = car({ id: data.id, version: 1 })
  await api.mutate('vehicles.save', { ...edit, colour: 'blue' })
  expect(await api.mutate('vehicles.save', { ...edit, colour: 'green' })).toMatchObject({
    status: 409,
    fault: { reason: 'stale' },
  })
})

test('a booked car is not put away, and the job is named', async () => {
  const job = await bookOne(api, shop, 'wash')
  const refused = await api.mutate('vehicles.archive', { id: shop.vehicles[0], version: 1 })
  expect(refused).toMatchObject({ status: 400, fault: { reason: 'vehicle-booked' } })
  expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
})
