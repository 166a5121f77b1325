import { beforeEach, expect, it } from 'vitest'
import { heldWords, holdReminders } from '../../../main/services/backup/held.ts'
import { getUpkeepSettings } from '../../../main/services/upkeep/settings.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { change, duePlan } from '../reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
const copyAt = () => desk.now() - 24 * 60
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T14:00:00Z')
  shop = await testShop(desk)
})

/** One message in each of these states; their ids. */
async function messages(...states: string[]): Promise<string[]> {
  const vehicleId = shop.vehicles[0]!
  const planId = await duePlan(desk, vehicleId)
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
  return desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    const ids: string[] = []
    for (const [i, state] of states.entries()) {
      const { id } = await tx.message.create({
        data: {
          ...{ mailId: `<${i}@example.com>`, customerId, vehicleId, planId, ruleOn: '2026-04-28', state },
          ...{ channel: 'email', address: 'a@example.com', tryNo: 1, templateId: 'due', language: 'en' },
          ...{ subject: 's', body: 'b', unfilled: [], slots: [], createdAt: 0 },
        },
      })
      ids.push(id)
    }
    return ids
  })
}

const set = (id: string, data: object) =>
  desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.message.update({ where: { id }, data }))
const words = (nowAt = desk.now()) => heldWords(desk.store.read, nowAt, 'America/New_York')
const since = 'This shop was restored from the copy of Tue 14 April at 10:00.'

it('holds what waits to go out, and leaves alone what went out or never will', async () => {
  const ids = await messages('draft', 'approved', 'sending', 'sent', 'withdrawn', 'failed')
  expect(await holdReminders(desk, copyAt())).toBe(3)
  const rows = await desk.store.read.message.findMany({ orderBy: { mailId: 'asc' } })
  expect(rows.map(({ state }) => state)).toEqual([
    'failed',
    'failed',
    'failed',
    'sent',
    'withdrawn',
    'failed',
  ])
  const failure = {
    code: 'unknown',
    text: expect.stringMatching(/^Restored from the copy of Tue 14 April at 10:00: it may have gone out/),
    at: desk.now(),
  }
  expect(rows.map(row => row.failure)).toEqual([failure, failure, failure, null, null, null])
  const line = await desk.store.read.auditLine.findFirstOrThrow({ where: { act: 'restored' } })
  expect([line.entity, line.entityId]).toEqual(['shop', '1'])
  const { held, ...detail } = line.detail as { held: string[] }
  expect(detail).toEqual({ copyAt: copyAt(), automatic: false })
  expect(held.sort()).toEqual(ids.slice(0, 3).sort())
})

it('stops reminders that go out by themselves, and says so until somebody switches them on again', async () => {
  await change(desk, { automatic: true })
  const before = await getUpkeepSettings(desk)
  await holdReminders(desk, copyAt())
  expect(await getUpkeepSettings(desk)).toEqual({
    ...before,
    automatic: false,
    version: before.version + 1,
  })
  expect(await words()).toBe(
    `${since} Reminders are not sent by themselves until you switch that on again in the rules of upkeep.`,
  )
  await change(desk, { automatic: true })
  expect(await words()).toBeNull()
})

it('leaves the rules as they are where nothing went out by itself', async () => {
  const before = await getUpkeepSettings(desk)
  await holdReminders(desk, copyAt())
  expect(await getUpkeepSettings(desk)).toEqual(before)
  expect(await words()).toBeNull()
})

it('is said in figures until each is decided on, of the last restore and of no other failure', async () => {
  expect(await words()).toBeNull()
  const [one, two, other] = await messages('draft', 'approved', 'failed')
  await set(other!, { failure: { code: 'unknown', text: 'no answer', at: 1 } })
  await holdReminders(desk, copyAt())
  expect(await words()).toBe(
    `${since} 2 reminders waiting then may have gone out since: decide on each under Upkeep, Reminders.`,
  )
  await set(one!, { state: 'withdrawn' })
  expect(await words()).toBe(
    `${since} 1 reminder waiting then may have gone out since: decide on each under Upkeep, Reminders.`,
  )
  await set(two!, { failure: { code: 'bounced', text: 'back', at: 1 } })
  expect(await words()).toBeNull()
  await set(one!, { state: 'draft' })
  desk.setNow('2026-04-16T14:00:00Z')
  await holdReminders(desk, copyAt())
  expect(await words()).toMatch(
    /^This shop was restored from the copy of Wed 15 April at 10:00\. 1 reminder /,
  )
})

it('does nothing where no shop was set up', async () => {
  const empty = await makeDesk('2026-04-15T14:00:00Z')
  expect(await holdReminders(empty, copyAt())).toBe(0)
  expect(await empty.store.read.auditLine.count()).toBe(0)
})
