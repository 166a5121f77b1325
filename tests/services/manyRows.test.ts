import { afterAll, beforeAll, expect, test } from 'vitest'
import { findCustomers } from '../../main/services/records/customersFind.ts'
import { saveException } from '../../main/services/setUp/hours.ts'
import { carUpkeep } from '../../main/services/upkeep/car.ts'
import { findJobs } from '../../main/store/jobRows.ts'
import { makeDesk, type TestDesk } from './makeDesk.ts'
import { testShop } from './testShop.ts'

// More rows than SQLite takes parameters in one query (999 in the adapter), each with rows of its own.
const many = 1_200

let desk: TestDesk
let bayId: string

beforeAll(async () => {
  desk = await makeDesk('2026-04-15T12:10:00Z')
  bayId = (await testShop(desk)).bays['Bay 1']!
  const rows = Array.from({ length: many }, (_, i) => i)
  const firstAt = desk.now() + 60
  await desk.store.transact({ who: 'test', at: desk.now() }, async (tx, audit) => {
    await tx.customer.createMany({ data: rows.map(i => ({ id: `c${i}`, name: `Person ${i}` })) })
    await tx.vehicle.createMany({
      data: rows.map(i => ({ id: `v${i}`, customerId: `c${i}`, plate: `MNY ${i}`, sizeClass: 'medium' })),
    })
    await tx.job.createMany({
      data: rows.map(i => ({
        id: `j${i}`,
        number: i + 1,
        customerId: `c${i}`,
        vehicleId: `v${i}`,
        status: 'booked',
        dropOffAt: firstAt + i * 1440,
        promisedAt: firstAt + i * 1440 + 120,
        handoverAt: firstAt + i * 1440 + 120,
        safeAt: firstAt + i * 1440 + 120,
        advisedAt: firstAt + i * 1440 + 120,
        createdAt: desk.now(),
      })),
    })
    await tx.product.create({ data: { id: 'top', name: 'Ovrel Veil', kind: 'topper' } })
    await tx.layer.createMany({
      data: rows.map(i => ({
        id: `l${i}`,
        vehicleId: `v${i}`,
        productId: 'top',
        stage: 'topper',
        laidOn: '2025-01-10',
      })),
    })
    await tx.inspection.createMany({
      data: rows.map(i => ({
        layerId: `l${i}`,
        onDay: '2025-06-10',
        working: true,
        secondLook: true,
        exposure: 1,
        at: firstAt,
        who: 'test',
      })),
    })
    await tx.jobStep.createMany({
      data: rows.flatMap(i =>
        [1, 0].map(position => ({
          jobId: `j${i}`,
          position,
          kind: 'work',
          name: position === 0 ? 'Wash' : 'Dry',
          stage: 'prepare',
          needs: 'wet',
          minutes: 60,
          bayId,
          startAt: firstAt + i * 1440 + position * 60,
          endAt: firstAt + i * 1440 + position * 60 + 60,
        })),
      ),
    })
    audit({ act: 'filled', entity: 'job', entityId: '' })
  })
})
afterAll(() => desk.close())

test('customers are found among more than one query can name', async () => {
  expect((await findCustomers(desk, { text: 'person' })).total).toBe(many)
  const { customers } = await findCustomers(desk, { text: 'mny1199' })
  expect(customers.map(customer => customer.name)).toEqual(['Person 1199'])
})

test('jobs are read with their steps in order, however many there are', async () => {
  const jobs = await findJobs(desk.store.read, { status: 'booked' })
  expect(jobs.map(job => job.number)).toEqual(Array.from({ length: many }, (_, i) => i + 1))
  expect(jobs.every(job => job.steps.map(step => step.name).join() === 'Wash,Dry')).toBe(true)
})

test('a car opens, however many others were looked at with the same product on', async () => {
  const car = await carUpkeep(desk, { vehicleId: 'v7' })
  expect(car.life?.lives).toBe(many)
})

test('a change of hours looks at all that is booked, and names only the first few', async () => {
  const closed = { date: '2026-04-16', hours: [], note: '' }
  await expect(saveException(desk, closed)).rejects.toMatchObject({
    code: 'touches-bookings',
    message: expect.stringContaining('Job 2 (MNY 1): drop-off, Thu 16 April 2026, 09:10, and 3 more times'),
  })
})
