import { expect, test } from 'vitest'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { oneApproved } from './mailDesk.ts'

test('What went out today is today’s until the shop’s own midnight, not that of UTC', async () => {
  const { desk, id } = await oneApproved()
  desk.setNow('2026-04-15T21:30:00Z')
  await runOutbox(desk)
  // 21:00 in New York, 01:00 of the next day in UTC.
  desk.setNow('2026-04-16T01:00:00Z')
  const evening = await batch(desk)
  expect(evening).toMatchObject({ today: '2026-04-15', sentToday: 1 })
  expect(evening.messages.map(each => [each.id, each.state])).toEqual([[id, 'sent']])
  // A minute after midnight there.
  desk.setNow('2026-04-16T04:01:00Z')
  expect(await batch(desk)).toMatchObject({ today: '2026-04-16', sentToday: 0, messages: [] })
})

test('A letter is sent, and counts against no day', async () => {
  const { desk, id } = await oneApproved()
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.message.update({ where: { id }, data: { state: 'sent', channel: 'letter', sentAt: desk.now() } }),
  )
  const now = await batch(desk)
  expect(now.sentToday).toBe(0)
  expect(now.messages.map(each => each.state)).toEqual(['sent'])
})
