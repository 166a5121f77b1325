import { expect, test } from 'vitest'
import { pinJob } from '../../../main/services/dayPlan/pin.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('A booked car is pinned and let go on the version that was seen, each with its line; one that is here is not', async () => {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  const { id, version } = await bookJob(desk, await testShop(desk), { treatments: ['wash'] })
  const pinned = async () => (await desk.store.read.job.findUniqueOrThrow({ where: { id } })).pinned
  await pinJob(desk, { id, version, pinned: true })
  expect(await pinned()).toBe(true)
  await expect(pinJob(desk, { id, version, pinned: false })).rejects.toThrow()
  expect(await pinned()).toBe(true)
  await pinJob(desk, { id, version: version + 1, pinned: false })
  expect(await pinned()).toBe(false)
  const acts = await desk.store.read.auditLine.findMany({ where: { entityId: id }, orderBy: { id: 'asc' } })
  expect(acts.map(line => line.act).slice(-2)).toEqual(['pinned', 'unpinned'])
  await arrive(desk, { id, version: (await getJob(desk, { id })).version })
  const here = (await getJob(desk, { id })).version
  await expect(pinJob(desk, { id, version: here, pinned: true })).rejects.toMatchObject({
    code: 'not-booked',
  })
  await expect(pinJob(desk, { id: 'none', version: 1, pinned: true })).rejects.toMatchObject({
    code: 'missing',
  })
})
