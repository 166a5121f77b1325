import { expect, test } from 'vitest'
import { addressMoved, nextMail } from '../../../main/services/reminders/nextMail.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { oneApproved } from './mailDesk.ts'

test('next is approved e-mail whose hour has come, to the minute', async () => {
  const { desk, id } = await oneApproved()
  const found = async (change: object) => {
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.message.update({ where: { id }, data: change }),
    )
    return (await desk.store.read.message.findMany(nextMail(desk.now()))).map(each => each.id)
  }
  expect(await found({ notBeforeAt: null })).toEqual([id])
  expect(await found({ notBeforeAt: desk.now() })).toEqual([id])
  expect(await found({ notBeforeAt: desk.now() + 1 })).toEqual([])
  expect(await found({ notBeforeAt: null, channel: 'letter' })).toEqual([])
  expect(await found({ channel: 'email', state: 'draft' })).toEqual([])
})

test('an address has moved where the owner’s is another, not where only its capitals are', async () => {
  const { desk, car } = await oneApproved()
  const customerId = await agree(desk, car(), [], 'New@example.com')
  const moved = (address: string) => addressMoved(desk.store.read, { customerId, address })
  expect(await moved('new@EXAMPLE.com')).toBeNull()
  expect(await moved('owner@example.com')).toContain('another one by now')
})
