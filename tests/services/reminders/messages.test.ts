import { expect, test } from 'vitest'
import { minuteOf } from '../../../main/domain/calendar/index.ts'
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

/** Has a message sent at that time by that way, whatever the outbox thinks of it. */
async function sentBy(change: { channel?: string; sentAt: string }) {
  const made = await oneApproved()
  const sentAt = minuteOf(Temporal.Instant.from(change.sentAt))
  await made.desk.store.transact({ who: 'test', at: made.desk.now() }, tx =>
    tx.message.update({ where: { id: made.id }, data: { ...change, state: 'sent', sentAt } }),
  )
  return batch(made.desk)
}

test('What went out late on the evening before is not today’s, though it is in UTC', async () => {
  // 22:00 of the 14th in New York.
  expect(await sentBy({ sentAt: '2026-04-15T02:00:00Z' })).toMatchObject({ sentToday: 0, messages: [] })
  expect(await sentBy({ sentAt: '2026-04-15T04:00:00Z' })).toMatchObject({ sentToday: 1 })
})

test('A letter is sent, and counts against no day', async () => {
  const now = await sentBy({ channel: 'letter', sentAt: '2026-04-15T14:00:00Z' })
  expect(now.sentToday).toBe(0)
  expect(now.messages.map(each => each.state)).toEqual(['sent'])
})
