import { beforeEach, expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { giveStep } from '../../../main/services/job/people.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York. Mika and Sal wash, Mika and Jo polish.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const wall = (hour: number) => atWall('2026-04-15', hour * 60, 'America/New_York')
const otherOf = (name: string) => shop.crew[name]!

async function washing() {
  const people = await desk.store.read.crewMember.findMany()
  shop.crew = Object.fromEntries(people.map(({ id, name }) => [name, id]))
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  const from = job.steps[0]!.crew[0]!
  const to = from.name === 'Mika' ? 'Sal' : 'Mika'
  return {
    job,
    give: { id: job.id, version: job.version, position: 0, fromId: from.id, toId: otherOf(to) },
    from,
    to,
  }
}

test('A step is given to somebody who can do it; never to who lacks the skill, nor twice', async () => {
  const { job, give, to } = await washing()
  await expect(giveStep(desk, { ...give, toId: otherOf('Jo') })).rejects.toMatchObject({ code: 'no-skill' })
  await expect(giveStep(desk, { ...give, toId: give.fromId })).rejects.toMatchObject({ code: 'as-before' })
  const { version } = await giveStep(desk, give)
  const given = await getJob(desk, { id: job.id })
  expect(given.steps[0]).toMatchObject({ crew: [{ name: to }], passes: [] })
  await expect(giveStep(desk, give)).rejects.toMatchObject({ code: 'stale' })
  await expect(giveStep(desk, { ...give, version })).rejects.toMatchObject({ code: 'stale' })
})

test('Who is away then, or with another car, is asked about first, and given the step once that was seen', async () => {
  const { job, give } = await washing()
  await saveAbsence(desk, { crewId: give.toId, fromAt: wall(8), toAt: wall(18), reason: '' })
  await expect(giveStep(desk, give)).rejects.toMatchObject({
    code: 'touches-bookings',
    message: expect.stringContaining('missing from "Wash"'),
  })
  expect((await getJob(desk, { id: job.id })).standing).toBe('kept')
  await giveStep(desk, { ...give, accepted: true })
  expect((await getJob(desk, { id: job.id })).standing).toBe('lacking')
})

test('A step under way passes to another with both times kept, and who passed it on is free', async () => {
  const { job, give, from, to } = await washing()
  let { version } = await arrive(desk, { id: job.id, version: job.version })
  ;({ version } = await startStep(desk, { id: job.id, version, position: 0 }))
  desk.setNow('2026-04-15T12:30:00Z')
  await expect(giveStep(desk, { ...give, version, at: wall(7) })).rejects.toMatchObject({ code: 'too-old' })
  await giveStep(desk, { ...give, version })
  expect((await getJob(desk, { id: job.id })).steps[0]).toMatchObject({
    actualStartAt: wall(8),
    crew: [{ name: to }],
    passes: [{ name: from.name, untilAt: wall(8) + 30 }],
  })
  // The one who began it goes home, and nobody is missing.
  await saveAbsence(desk, { crewId: from.id, fromAt: wall(8) + 31, toAt: wall(18), reason: 'ill' })
  expect((await getJob(desk, { id: job.id })).standing).toBe('kept')
})
