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
const crew = async (input?: object) => (await api.query('crew.list', input)).data
const mornings = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 720 }))

/** Books a wash and answers with the job and the row of who is to do it. */
async function washedBy() {
  const job = await bookOne(api, shop, 'wash')
  const name = job.steps[0].crew[0].name
  const member = (await crew()).find((each: { name: string }) => each.name === name)
  return { job, member }
}

test('somebody is added, changed, ordered, taken off and back', async () => {
  const { data } = await api.mutate('crew.save', { name: 'Ada', skills: ['wash'], weekly: null })
  const edit = { id: data.id, version: 1, name: 'Ada R', skills: ['wash', 'coat'], weekly: mornings }
  await api.mutate('crew.save', edit)
  expect((await crew()).at(-1)).toMatchObject({ name: 'Ada R', weekly: mornings, version: 2 })
  await api.mutate('crew.save', { ...edit, version: 2, weekly: null })
  expect((await crew()).at(-1).weekly).toBeNull()
  const ids = (await crew()).map((member: { id: string }) => member.id)
  await api.mutate('crew.order', { ids: ids.toReversed() })
  expect((await crew())[0].name).toBe('Ada R')
  await api.mutate('crew.archive', { id: data.id, version: 3 })
  expect(await crew()).toHaveLength(3)
  await api.mutate('crew.restore', { id: data.id, version: 4 })
  expect((await crew()).at(-1).name).toBe('Ada R')
})

test.each([
  ['no name', { name: '' }, 'name'],
  ['no skill', { skills: [] }, 'skills'],
  ['a skill nobody knows', { skills: ['juggle'] }, 'skills.0'],
  ['a name somebody bears', { name: 'MIKA' }, 'name'],
  ['hours of their own but none', { weekly: [] }, 'weekly'],
  ['hours that end before they begin', { weekly: [{ weekday: 1, from: 600, to: 600 }] }, 'weekly.0.to'],
])('somebody with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const answer = await api.mutate('crew.save', { name: 'Ada', skills: ['wash'], weekly: null, ...change })
  expect(answer).toMatchObject({ status: 400, fault: { field } })
  expect(await crew({ archived: true })).toHaveLength(3)
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const edit = { id: shop.crew.Jo, version: 1, skills: ['polish'], weekly: null }
  await api.mutate('crew.save', { ...edit, name: 'Jo' })
  expect((await api.mutate('crew.save', { ...edit, name: 'Joanna' })).status).toBe(409)
  expect((await api.mutate('crew.save', { ...edit, id: 'nobody', name: 'X' })).status).toBe(409)
})

describe('an absence', () => {
  const absence = (change: object = {}) => ({
    crewId: shop.crew.Jo,
    fromAt: at('2026-07-01', 0),
    toAt: at('2026-07-15', 0),
    reason: 'holiday',
    ...change,
  })

  test('is kept, changed and removed', async () => {
    const { data } = await api.mutate('crew.saveAbsence', absence())
    await api.mutate('crew.saveAbsence', absence({ id: data.id, version: 1, reason: 'long holiday' }))
    const jo = (await crew()).find((member: { name: string }) => member.name === 'Jo')
    expect(jo.absences).toMatchObject([{ reason: 'long holiday', version: 2 }])
    expect((await api.mutate('crew.removeAbsence', { id: data.id, version: 1 })).status).toBe(409)
    expect((await api.mutate('crew.removeAbsence', { id: data.id, version: 2 })).status).toBe(200)
  })

  test.each([
    ['that ends before it begins', { toAt: 29_000_000 }, 'toAt'],
    ['of somebody who is not there', { crewId: 'nobody' }, 'crewId'],
  ])('%s is refused with the field named', async (_, change, field) => {
    const answer = await api.mutate('crew.saveAbsence', absence(change))
    expect(answer.fault?.field).toBe(field)
    expect(await api.desk.store.read.crewAbsence.count()).toBe(0)
  })

  test('that overlaps another is refused', async () => {
    await api.mutate('crew.saveAbsence', absence())
    const second = await api.mutate('crew.saveAbsence', absence({ fromAt: at('2026-07-14', 0) }))
    expect(second).toMatchObject({ status: 400, fault: { reason: 'closure-overlap', field: 'fromAt' } })
  })

  test('over a booked step is told first, and kept once accepted: nobody plans an illness', async () => {
    const { job, member } = await washedBy()
    const ill = absence({ crewId: member.id, fromAt: at('2026-04-15', 0), toAt: at('2026-04-16', 0) })
    const refused = await api.mutate('crew.saveAbsence', ill)
    expect(refused).toMatchObject({ status: 400, fault: { reason: 'touches-bookings', field: 'fromAt' } })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204): Wash`)
    expect(await api.desk.store.read.crewAbsence.count()).toBe(0)
    expect((await api.mutate('crew.saveAbsence', { ...ill, accepted: true })).status).toBe(200)
  })
})

test('somebody with booked steps is taken off the crew only once these have been named', async () => {
  const { job, member } = await washedBy()
  const { id, version } = member
  const refused = await api.mutate('crew.archive', { id, version })
  expect(refused).toMatchObject({ status: 400, fault: { reason: 'touches-bookings' } })
  expect(refused.message).toContain(`Job ${job.number} (KFR 204): Wash`)
  expect(await crew()).toHaveLength(3)
  expect((await api.mutate('crew.archive', { id, version, accepted: true })).status).toBe(200)
})

test.each([
  ['a skill its step needs', { skills: ['coat'] }],
  ['the hours its step lies in', { weekly: [{ weekday: 1, from: 480, to: 720 }] }],
])('taking away %s is told first', async (_, change) => {
  const { job, member } = await washedBy()
  const { id, version, name, skills, weekly } = member
  const edit = { id, version, name, skills, weekly, ...change }
  const refused = await api.mutate('crew.save', edit)
  expect(refused).toMatchObject({ status: 400, fault: { reason: 'touches-bookings' } })
  expect(refused.message).toContain(`Job ${job.number} `)
  expect((await api.mutate('crew.save', { ...edit, accepted: true })).status).toBe(200)
})
