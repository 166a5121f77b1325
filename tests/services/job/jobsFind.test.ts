import { afterAll, beforeAll, expect, it } from 'vitest'
import { findJobsBy } from '../../../main/services/job/jobsFind.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
/** Jobs 1 to 3 are of the first car, job 4 of the second. */
beforeAll(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  for (const askedDate of ['2026-04-20', '2026-04-22', '2026-04-24'])
    await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate })
  await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate: '2026-04-27', vehicle: 1 })
})
afterAll(() => desk.close())

const numbers = async (text: string) => (await findJobsBy(desk, { text })).jobs.map(job => job.number)

it.each([
  ['4', [4]],
  ['job 4', [4]],
  [' Job#4 ', [4]],
  ['#4', [4]],
  ['4 x', []],
  ['', []],
  ['   ', []],
  ['Birk', [4]],
  ['KFR 204', [3, 2, 1]],
])('finds by "%s"', async (text, found) => {
  expect(await numbers(text)).toEqual(found)
})

it('names the car and its owner, and puts what is over last, a hold that ran out too', async () => {
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    await tx.job.update({ where: { number: 3 }, data: { status: 'held', heldUntilAt: desk.now() } })
    await tx.job.update({ where: { number: 2 }, data: { status: 'held', heldUntilAt: desk.now() + 1 } })
  })
  const { jobs } = await findJobsBy(desk, { text: 'Vale' })
  expect(jobs.map(job => [job.number, job.status])).toEqual([
    [2, 'held'],
    [1, 'booked'],
    [3, 'lapsed'],
  ])
  expect(jobs[0]).toMatchObject({
    customerName: 'Ines Vale',
    plate: 'KFR 204',
    vehicleWords: expect.stringContaining('Wendrel'),
  })
  expect(jobs[0]).not.toHaveProperty('heldUntilAt')
})

it('finds the jobs of a customer who is archived', async () => {
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.customer.updateMany({ where: { name: 'Toma Birk' }, data: { archivedAt: 5 } }),
  )
  expect(await numbers('Birk')).toEqual([4])
})

it('answers with twenty at most', async () => {
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    const { id: _, ...row } = await tx.job.findUniqueOrThrow({ where: { number: 1 } })
    await tx.job.createMany({ data: Array.from({ length: 25 }, (_, i) => ({ ...row, number: 100 + i })) })
  })
  const found = await numbers('Vale')
  expect(found).toHaveLength(20)
  expect(found[0]).toBe(124)
})
