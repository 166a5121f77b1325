import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import type { Channel } from '../../../main/api/views.ts'
import { giveConsent, withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { writeOne } from '../../../main/services/reminders/prepare.ts'
import { stopMessages } from '../../../main/services/upkeep/stopMessages.ts'
import { duePlan, type ReminderDesk, reminderDesk } from '../reminders/reminderDesk.ts'
import { agree } from './coatedCar.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
const plans: string[] = []
const owners: string[] = []
const said = { source: 'telephone', wording: 'as they said' }

beforeAll(async () => {
  ;({ desk, shop } = await reminderDesk(1))
  for (const [i, vehicleId] of shop.vehicles.slice(0, 2).entries()) {
    owners.push(await agree(desk, vehicleId, ['email', 'letter'], `owner${i}@example.com`))
    plans.push(await duePlan(desk, vehicleId))
  }
})
afterAll(() => desk.close())
beforeEach(() =>
  desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    await tx.message.deleteMany()
    await tx.job.updateMany({ where: { status: 'held' }, data: { status: 'cancelled' } })
  }),
)

const owner = (i: number) => owners[i] ?? ''
const write = (i: number, channel: Channel = 'email') =>
  writeOne(desk, { planId: plans[i] ?? '', ruleOn: '2026-04-28', channel })
const stop = (about: Parameters<typeof stopMessages>[2]) =>
  desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    stopMessages(tx, desk.now(), about, 'It is not wanted.'),
  )
const states = async () =>
  Object.fromEntries((await desk.store.read.message.findMany()).map(row => [row.id, row.state]))
const held = () => desk.store.read.job.count({ where: { status: 'held' } })

it('stops those of one visit, plan, car or owner and no others, says why, and lets their places go', async () => {
  for (const about of [
    { planId: plans[0] ?? '', ruleOn: '2026-04-28' },
    { planId: plans[0] ?? '' },
    { vehicleId: shop.vehicles[0] ?? '' },
    { customerId: owner(0) },
    { customerId: owner(0), channel: 'email' as const },
  ]) {
    const [mine, theirs] = [(await write(0)).id, (await write(1)).id]
    expect(await held()).toBe(4)
    expect(await stop(about)).toBe(1)
    expect(await states()).toEqual({ [mine]: 'withdrawn', [theirs]: 'draft' })
    expect(await held()).toBe(2)
    const row = await desk.store.read.message.findUniqueOrThrow({ where: { id: mine } })
    expect(JSON.stringify(row)).toContain('It is not wanted.')
    expect(await stop(about)).toBe(0)
    await stop({ customerId: owner(1) })
    await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.message.deleteMany())
  }
})

it('of another visit or channel stay', async () => {
  const { id } = await write(0)
  expect(await stop({ planId: plans[0] ?? '', ruleOn: '2027-04-28' })).toBe(0)
  expect(await stop({ customerId: owner(0), channel: 'letter' })).toBe(0)
  expect(await states()).toEqual({ [id]: 'draft' })
})

it.each([
  ['draft', 1],
  ['approved', 1],
  ['failed', 1],
  ['sent', 0],
  ['withdrawn', 0],
])('counts one that is %s as %i to stop', async (state, count) => {
  await write(0)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.message.updateMany({ data: { state } }))
  expect(await stop({ customerId: owner(0) })).toBe(count)
})

it('all go with the word of an owner who wants nothing more, one channel’s with the word about that channel', async () => {
  const mail = await write(0)
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    const { id: _, failure: __, ...row } = await tx.message.findUniqueOrThrow({ where: { id: mail.id } })
    await tx.message.create({
      data: { ...row, id: 'letter', mailId: 'letter', channel: 'letter', unfilled: [], slots: [] },
    })
  })
  expect(await withdrawConsent(desk, { ...said, customerId: owner(0), channel: 'letter' })).toEqual({
    stopped: 1,
  })
  expect(await states()).toEqual({ [mail.id]: 'draft', letter: 'withdrawn' })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.message.update({ where: { id: 'letter' }, data: { state: 'approved' } }),
  )
  expect(await withdrawConsent(desk, { ...said, customerId: owner(0), channel: 'all' })).toEqual({
    stopped: 2,
  })
  expect(await states()).toEqual({ [mail.id]: 'withdrawn', letter: 'withdrawn' })
  for (const channel of ['email', 'letter'] as const)
    await giveConsent(desk, { ...said, customerId: owner(0), channel })
})
