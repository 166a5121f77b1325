import { expect, test } from 'vitest'
import { chargesOn } from '../../../main/services/job/chargesOn.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('A job’s charges come in the order of its bill, and only its own', async () => {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  const shop = await testShop(desk)
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const other = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1 })
  const charge = (jobId: string, position: number, words: string) => ({
    ...{ jobId, position, words, kind: 'extra', quantity: '2', amountMinor: 500 + position },
  })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.jobCharge.createMany({
      data: [charge(job.id, 1, 'second'), charge(other.id, 0, 'not ours'), charge(job.id, 0, 'first')],
    }),
  )
  expect(await chargesOn(desk.store.read, job.id)).toEqual([
    { kind: 'extra', words: 'first', quantity: '2', amountMinor: 500 },
    { kind: 'extra', words: 'second', quantity: '2', amountMinor: 501 },
  ])
})
