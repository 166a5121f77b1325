import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, expect, test } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { getJob } from '../../main/services/job/jobView.ts'
import { openStore } from '../../main/store/store.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop

// Wednesday 15 April 2026, 08:10 in New York.
beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
})

const wish = (treatments: (keyof TestShop['treatments'])[]) => ({
  condition: 'good',
  treatmentIds: treatments.map(name => shop.treatments[name]),
})

async function hold(treatments: (keyof TestShop['treatments'])[], vehicle: number) {
  const offers = await api.query('booking.offers', { ...wish(treatments), sizeClass: 'medium' })
  return api.mutate('booking.hold', {
    ...wish(treatments),
    vehicleId: shop.vehicles[vehicle],
    plan: offers.data.soonest.plan,
  })
}

test('A two-layer coating for a new customer, from the call to the board', async () => {
  const customer = await api.mutate('customers.save', { name: 'Lotte Grange', phone: '(212) 555-0177' })
  const vehicle = await api.mutate('vehicles.save', {
    customerId: customer.data.id,
    plate: 'GRG 417',
    make: 'Brindle',
    model: 'Hollick',
    colour: 'red',
    sizeClass: 'large',
    finish: 'gloss',
  })
  const offers = await api.query('booking.offers', {
    ...wish(['twoLayers', 'correction']),
    sizeClass: 'large',
    askedDate: '2026-04-17',
  })
  expect(offers.status).toBe(200)
  expect(
    [offers.data.soonest, offers.data.leastBlocked, offers.data.askedDay].map(offer => offer.feasible),
  ).toEqual([true, true, true])
  const { plan, handoverAt } = offers.data.askedDay
  const held = await api.mutate('booking.hold', {
    ...wish(['twoLayers', 'correction']),
    vehicleId: vehicle.data.id,
    askedDate: '2026-04-17',
    plan,
  })
  expect(held).toMatchObject({ status: 200, data: { jobNumber: 1, heldUntilAt: api.desk.now() + 30 } })
  const { jobId, version } = held.data
  expect(await api.mutate('booking.confirm', { jobId, version })).toMatchObject({ status: 200 })

  const board = await api.query('board.range', { fromDate: '2026-04-17', days: 3 })
  const stays = board.data.stays.filter((stay: { jobId: string }) => stay.jobId === jobId)
  expect(stays[0]).toMatchObject({ plate: 'GRG 417', status: 'booked', customerName: 'Lotte Grange' })
  expect(stays.at(-1).toAt).toBe(handoverAt)
  const job = await api.query('jobs.get', { id: jobId })
  // The wash of both, 60 of the correction's 240 minutes, is charged once.
  const priceMinor = 139_900 + 58_000 - 14_500
  expect(job.data).toMatchObject({ promisedAt: handoverAt, priceMinor, currency: 'USD' })
  expect((await api.query('jobs.find', { text: 'grg4' })).data.jobs).toMatchObject([{ id: jobId, number: 1 }])
  expect((await api.query('jobs.find', { text: 'job 1' })).data.jobs).toHaveLength(1)
  expect((await api.query('jobs.find', { text: ' ' })).data.jobs).toEqual([])
})

test('What is booked is still there when the database is opened again', async () => {
  const held = await hold(['twoLayers'], 0)
  await api.mutate('booking.confirm', { jobId: held.data.jobId, version: held.data.version })
  const before = await getJob(api.desk, { id: held.data.jobId })
  // A copy of the file as it lies there now, without closing it first: what a killed server leaves behind.
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-again-'))
  const [{ file }] = await api.desk.store.read.$queryRaw<
    [{ file: string }]
  >`select file from pragma_database_list`
  for (const tail of ['', '-wal']) copyFileSync(`${file}${tail}`, join(dir, `lustrum.db${tail}`))
  const store = await openStore(join(dir, 'lustrum.db'), { dir: migrationsDir })
  expect(await getJob({ ...api.desk, store }, { id: held.data.jobId })).toEqual(before)
  await store.close()
  rmSync(dir, { recursive: true, force: true })
})

test('Two desks ask for one place in the same moment: one has it, the other hears who', async () => {
  const offers = await api.query('booking.offers', { ...wish(['twoLayers']), sizeClass: 'medium' })
  const { plan } = offers.data.soonest
  const both = await Promise.all(
    [0, 1].map(vehicle =>
      api.mutate('booking.hold', { ...wish(['twoLayers']), vehicleId: shop.vehicles[vehicle], plan }),
    ),
  )
  expect(both.map(each => each.status).sort()).toEqual([200, 409])
  const lost = both.find(each => each.status === 409)!
  expect(lost.fault).toEqual({ reason: 'stale', field: 'plan' })
  expect(lost.message).toMatch(/^This place is gone: Bay \d is taken until/)
  const won = both.find(each => each.status === 200)!.data
  const confirms = await Promise.all(
    [1, 2].map(() => api.mutate('booking.confirm', { jobId: won.jobId, version: won.version })),
  )
  expect(confirms.map(each => each.status).sort()).toEqual([200, 400])
})

test('A job through the api: here, begun, finished, and refused out of turn', async () => {
  const held = await hold(['wash'], 0)
  const { jobId: id } = held.data
  let { version } = (await api.mutate('booking.confirm', { jobId: id, version: held.data.version })).data
  const does = async (path: string, input: object) => {
    const answer = await api.mutate(path, { id, version, ...input })
    if (answer.status === 200) version = answer.data.version
    return answer
  }
  expect(await does('jobs.startStep', { position: 0 })).toMatchObject({
    status: 400,
    fault: { reason: 'not-here' },
  })
  await does('jobs.arrive', {})
  expect(await does('jobs.startStep', { position: 0, at: 5 })).toMatchObject({
    fault: { reason: 'too-old', field: 'at' },
  })
  await does('jobs.startStep', { position: 0 })
  api.desk.setNow('2026-04-15T13:20:00Z')
  await does('jobs.finishStep', { position: 0 })
  expect(await does('jobs.handOver', {})).toMatchObject({ status: 200 })
  expect((await api.query('jobs.get', { id })).data).toMatchObject({
    status: 'handedOver',
    leftAt: api.desk.now(),
  })
  expect(await api.mutate('jobs.reopenStep', { id, version: 1 })).toMatchObject({ status: 409 })
})

test('The morning sheet comes by date', async () => {
  await hold(['wash'], 0)
  const sheet = await api.query('morning.sheet', { date: '2026-04-15' })
  expect(sheet.data).toMatchObject({ shopName: 'Ashdown Paint Care', date: '2026-04-15' })
  // A place that is only held is nobody's arrival yet, but its bay is taken.
  expect(sheet.data.arrivals).toEqual([])
  expect(sheet.data.bays[0].cars).toHaveLength(1)
})

test.each([
  ['no treatment', 'booking.offers', { treatmentIds: [] }, 'treatmentIds'],
  ['an unknown size', 'booking.offers', { sizeClass: 'huge' }, 'sizeClass'],
  ['an unknown condition', 'booking.offers', { condition: 'rusty' }, 'condition'],
  ['an unknown finish', 'booking.offers', { finish: 'velvet' }, 'finish'],
  ['a date that is none', 'booking.offers', { askedDate: '15.04.2026' }, 'askedDate'],
  ['a day gone by', 'booking.offers', { askedDate: '2026-04-14' }, 'askedDate'],
])('An offer for %s is refused by name', async (_, path, change, field) => {
  const answer = await api.query(path, { ...wish(['wash']), sizeClass: 'medium', ...change })
  expect(answer.status).toBe(400)
  expect(answer.fault?.field).toBe(field)
})

test('Two treatments that coat the same paint are refused, naming both', async () => {
  const [twoLayers] = (await api.query('treatments.list')).data.filter(
    (each: { id: string }) => each.id === shop.treatments.twoLayers,
  )
  const { name, summary, prices, steps } = twoLayers
  const other = await api.mutate('treatments.save', { name: `${name} again`, summary, prices, steps })
  expect(other.status).toBe(200)
  const offers = await api.query('booking.offers', {
    condition: 'good',
    treatmentIds: [shop.treatments.twoLayers, other.data.id],
    sizeClass: 'medium',
  })
  expect(offers).toMatchObject({ status: 400, fault: { reason: 'coated-twice', field: 'treatmentIds' } })
  expect(offers.message).toContain(
    'Two layers (Ovrel Two) and Two layers again (Ovrel Two) both coat the paint',
  )
})

test('A plan with a broken time, and a board of no days, are refused by path', async () => {
  const offers = await api.query('booking.offers', { ...wish(['wash']), sizeClass: 'medium' })
  const plan = structuredClone(offers.data.soonest.plan)
  plan.steps[0].start = 0.5
  const input = { ...wish(['wash']), vehicleId: shop.vehicles[0], plan }
  expect((await api.mutate('booking.hold', input)).fault).toEqual({
    reason: 'invalid',
    field: 'plan.steps.0.start',
  })
  expect(
    (await api.mutate('booking.hold', { ...input, plan: offers.data.soonest.plan, vehicleId: 'gone' }))
      .status,
  ).toBe(404)
  expect((await api.query('board.range', { fromDate: '2026-04-15', days: 0 })).fault?.field).toBe('days')
  expect((await api.query('board.range', { fromDate: 'today', days: 3 })).fault?.field).toBe('fromDate')
  expect((await api.query('jobs.get', { id: 'gone' })).status).toBe(404)
  expect(await api.desk.store.read.job.count()).toBe(0)
})

test('The demo opens once, on an empty database only', async () => {
  expect(await api.mutate('shop.openDemo')).toMatchObject({ status: 400, fault: { reason: 'shop-there' } })
  const empty = await makeApi('2026-04-15T12:10:00Z')
  try {
    expect((await empty.mutate('shop.openDemo')).status).toBe(200)
    expect((await empty.query('shop.get')).data).toMatchObject({ demo: true })
    const board = await empty.query('board.range', { fromDate: '2026-04-15', days: 7 })
    expect(board.data.stays.length).toBeGreaterThan(20)
  } finally {
    await empty.close()
  }
})
