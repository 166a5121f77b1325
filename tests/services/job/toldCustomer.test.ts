import { beforeEach, expect, test } from 'vitest'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { tellCustomer, toldCustomer } from '../../../main/services/job/toldCustomer.ts'
import { getCustomer } from '../../../main/services/records/customers.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { duePlan } from '../reminders/reminderDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })

test('What may be said follows how the job stands; what was said stands on it', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const kinds = async () => (await toldCustomer(desk, { id })).drafts.map(draft => draft.kind)
  expect(await kinds()).toEqual(['confirmation', 'dayBefore', 'promiseMoved'])
  const [draft] = (await toldCustomer(desk, { id })).drafts
  expect(draft?.text).toMatch(/please bring it Wed 15 April 08:00\. We promise it for Wed 15 April 09:00/)
  await tellCustomer(desk, { id, kind: 'confirmation', channel: 'call', text: draft!.text })
  expect((await toldCustomer(desk, { id })).said).toMatchObject([{ kind: 'confirmation', text: draft!.text }])
  expect((await saidOf(desk, id))[0]).toBe('the customer was told by phone')
  await arrive(desk, await key(id))
  expect(await kinds()).toEqual(['promiseMoved'])
  await startStep(desk, { ...(await key(id)), position: 0 })
  await finishStep(desk, { ...(await key(id)), position: 0 })
  expect(await kinds()).toEqual(['ready'])
  const late = { id, kind: 'dayBefore', channel: 'call', text: 'too late' } as const
  await expect(tellCustomer(desk, late)).rejects.toMatchObject({ code: 'not-now' })
})

test('Of a customer it is known what they were told last, by whichever way', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const { customer, vehicle } = await getJob(desk, { id })
  const lastSaid = async () => (await getCustomer(desk, { id: customer.id })).lastSaid
  const planId = await duePlan(desk, vehicle.id)
  const reminded = (sentAt: number | null) =>
    desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.message.create({
        data: {
          ...{
            mailId: `<${sentAt}@example.com>`,
            customerId: customer.id,
            vehicleId: vehicle.id,
            planId,
          },
          ...{ ruleOn: '2026-04-28', state: 'sent', sentAt, channel: 'letter', address: 'x', tryNo: 1 },
          ...{ templateId: 'due', language: 'en', subject: 'topper renewal', body: 'b' },
          ...{ unfilled: [], slots: [], createdAt: 0 },
        },
      }),
    )
  await reminded(null)
  expect(await lastSaid()).toBeNull()
  await tellCustomer(desk, { id, kind: 'confirmation', channel: 'call', text: 'Until Wednesday.' })
  const firstAt = desk.now()
  expect(await lastSaid()).toEqual({ at: firstAt, channel: 'call', subject: '', kind: 'confirmation' })
  desk.setNow('2026-04-15T12:20:00Z')
  await tellCustomer(desk, { id, kind: 'promiseMoved', channel: 'email', text: 'An hour later.' })
  expect(await lastSaid()).toMatchObject({ at: firstAt + 20, channel: 'email', kind: 'promiseMoved' })
  await reminded(firstAt - 1)
  expect(await lastSaid()).toMatchObject({ at: firstAt + 20, kind: 'promiseMoved' })
  await reminded(firstAt + 21)
  expect(await lastSaid()).toEqual({
    at: firstAt + 21,
    channel: 'letter',
    subject: 'topper renewal',
    kind: null,
  })
})

test('It is said in the language of the customer', async () => {
  const { id, customer } = await bookJob(desk, shop, { treatments: ['wash'] })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.ownerReach.upsert({
      where: { customerId: customer.id },
      create: { customerId: customer.id, language: 'de' },
      update: { language: 'de' },
    }),
  )
  expect((await toldCustomer(desk, { id })).drafts[0]?.text).toContain('ist gebucht')
  await cancelJob(desk, { ...(await key(id)), reason: 'sold' })
  expect((await toldCustomer(desk, { id })).drafts).toEqual([])
})
