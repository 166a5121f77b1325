import { expect, test } from 'vitest'
import { holdReminders } from '../../../main/services/backup/held.ts'
import { cancelJob, promiseAgain } from '../../../main/services/job/jobActs.ts'
import { tellCustomer, toldCustomer } from '../../../main/services/job/toldCustomer.ts'
import { upkeepTick } from '../../../main/services/reminders/automatic.ts'
import { importBounce } from '../../../main/services/reminders/bounces.ts'
import { withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { sendWords, sendWordsAgain } from '../../../main/services/reminders/sendWords.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import type { startMailServer } from '../../outbox/mailServer.ts'
import { bookJob } from '../bookJob.ts'
import { saidOf } from '../job/saidOf.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { mailDesk, says } from './mailDesk.ts'
import { change } from './reminderDesk.ts'

const noTimes = { dropOffAt: null, promisedAt: null, readyAt: null }

/** A booked car, Wednesday 10:00 in New York, whose owner agreed to e-mail where nothing else is said. */
async function booked(options: Parameters<typeof startMailServer>[0] = {}, agreed = true) {
  const made = await mailDesk(options)
  const { desk, shop } = made
  const { id, customer } = await bookJob(desk, shop, { treatments: ['wash'] })
  await agree(desk, made.car(), agreed ? ['email'] : [])
  const say = async () => {
    const [draft] = (await toldCustomer(desk, { id })).drafts
    return sendWords(desk, { id, ...draft! })
  }
  const said = async () => (await toldCustomer(desk, { id })).said[0]
  return { ...made, id, customerId: customer.id, say, said }
}

test('Words go out by the outbox once, under an id of their own; when and how stands on the job', async () => {
  const { desk, server, id, say, said } = await booked()
  await say()
  expect(await said()).toMatchObject({ state: 'approved', outcome: 'goes out in a moment', again: false })
  // The clock of the host, not a person.
  await upkeepTick(desk)
  expect(server.letters).toHaveLength(1)
  await runOutbox(desk)
  expect(server.letters).toHaveLength(1)
  const row = await desk.store.read.jobWords.findFirstOrThrow()
  expect(server.letters[0]).toMatchObject({
    to: ['owner@example.com'],
    headers: { subject: expect.stringMatching(/^Your booking: /) },
    raw: expect.stringContaining('(KFR 204) is booked: please bring'),
  })
  expect(row.mailId).toMatch(/^<words\..*@ashdown\.example\.com>$/)
  expect(await said()).toMatchObject({ state: 'sent', outcome: expect.stringMatching(/^sent .*10:00$/) })
  expect((await saidOf(desk, id)).slice(0, 3)).toEqual([
    'the mail to the customer has left',
    'the mail to the customer was handed to the server',
    'words to the customer given to the outbox',
  ])
  // What was said by phone is no mail's outcome.
  await tellCustomer(desk, { id, kind: 'confirmation', channel: 'call', text: 'hello' })
  expect(await said()).toMatchObject({ channel: 'call', outcome: null })
})

test('Nobody is written to who did not agree, took it back, or whose address sent a letter back: it says so', async () => {
  const never = await booked({}, false)
  await expect(never.say()).rejects.toMatchObject({ code: 'no-consent' })
  expect((await toldCustomer(never.desk, { id: never.id })).said).toEqual([])

  const { desk, server, id, customerId, say, said } = await booked()
  await say()
  await withdrawConsent(desk, { customerId, channel: 'email', source: 'phone', wording: 'no more' })
  await runOutbox(desk)
  expect(server.letters).toHaveLength(0)
  expect(await said()).toMatchObject({
    state: 'withdrawn',
    outcome: 'not sent: The owner has withdrawn the consent for it.',
    text: expect.stringContaining('is booked'),
  })
  await expect(say()).rejects.toMatchObject({ code: 'withdrawn' })
  expect((await toldCustomer(desk, { id })).drafts).not.toEqual([])
})

test('An address the server refuses is told with its words and tried again by hand; one that sent it back is not', async () => {
  let taken = false
  const { desk, server, say, said } = await booked({
    onRcptTo: (_, __, done) => (taken ? done() : done(says(550))),
  })
  await say()
  expect(await runOutbox(desk)).toMatchObject({ failed: 1 })
  const failed = (await said())!
  expect(failed).toMatchObject({
    state: 'failed',
    again: true,
    outcome: expect.stringContaining('did not take'),
  })
  taken = true
  await sendWordsAgain(desk, failed)
  await expect(sendWordsAgain(desk, failed)).rejects.toMatchObject({ code: 'stale' })
  expect(await runOutbox(desk)).toMatchObject({ sent: 1 })
  const { mailId } = await desk.store.read.jobWords.findFirstOrThrow()
  expect(server.letters[0]!.headers['message-id']).toBe(mailId)
  const report = [
    'Content-Type: multipart/report; report-type=delivery-status; boundary="b"',
    '',
    '--b',
    'Content-Type: message/delivery-status',
    '',
    'Reporting-MTA: dns; mail.example.com',
    '',
    'Final-Recipient: rfc822; owner@example.com',
    'Action: failed',
    'Status: 5.1.1',
    '',
    '--b',
    'Content-Type: text/rfc822-headers',
    '',
    `Message-ID: ${mailId}`,
    '',
    '--b--',
  ].join('\r\n')
  await importBounce(desk, { text: report })
  expect(await said()).toMatchObject({
    state: 'failed',
    again: false,
    outcome: expect.stringContaining('sent it back'),
  })
  await expect(say()).rejects.toMatchObject({ code: 'address-bounced' })
})

test('Cut off before the answer it is sent again under the same id, and told as perhaps there twice', async () => {
  const { desk, server, say, said } = await booked()
  const { id } = await say()
  // As a kill between handing it over and the answer leaves it.
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.jobWords.update({ where: { id }, data: { state: 'sending', attempts: 1, startedAt: desk.now() } }),
  )
  expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
  expect(await said()).toMatchObject({
    state: 'approved',
    outcome: expect.stringContaining('may have arrived'),
  })
  desk.setNow('2026-04-15T14:31:00Z')
  await runOutbox(desk)
  expect(server.letters).toHaveLength(1)
  expect(server.letters[0]!.headers['message-id']).toBe(
    (await desk.store.read.jobWords.findFirstOrThrow()).mailId,
  )
  expect(await said()).toMatchObject({ state: 'sent', outcome: expect.stringContaining('perhaps twice') })
})

test('At night it waits for the morning, and what is not so any more by then never goes out', async () => {
  const { desk, server, id, say, said } = await booked()
  desk.setNow('2026-04-16T02:00:00Z')
  const { version } = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  await say()
  expect(await said()).toMatchObject({
    state: 'approved',
    outcome: expect.stringMatching(/^waits until .*quiet/),
  })
  expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
  await cancelJob(desk, { id, version, reason: 'sold' })
  desk.setNow('2026-04-16T15:00:00Z')
  await runOutbox(desk)
  expect(server.letters).toHaveLength(0)
  expect(await said()).toMatchObject({
    state: 'withdrawn',
    outcome: 'not sent: That no longer applies to this job.',
  })
})

test('Words of the night that name an older promise stay here, and are drafted anew', async () => {
  const { desk, server, id, say, said } = await booked()
  desk.setNow('2026-04-16T02:00:00Z')
  await say()
  const { version, promisedAt } = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  await promiseAgain(desk, { id, version, promisedAt: promisedAt + 1_440 })
  desk.setNow('2026-04-16T15:00:00Z')
  await runOutbox(desk)
  expect(server.letters).toHaveLength(0)
  const held = (await said())!
  expect(held).toMatchObject({
    state: 'withdrawn',
    outcome: expect.stringMatching(/^not sent: The times have moved since it was written/),
  })
  await say()
  await runOutbox(desk)
  expect(server.letters).toHaveLength(1)
})

test('A draft that was open while the promise moved is not sent', async () => {
  const { desk, id, said } = await booked()
  const [draft] = (await toldCustomer(desk, { id })).drafts
  const { version, promisedAt } = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  await promiseAgain(desk, { id, version, promisedAt: promisedAt + 60 })
  await expect(sendWords(desk, { id, ...draft! })).rejects.toMatchObject({ code: 'facts-moved' })
  expect(await said()).toBeUndefined()
})

test('Words to an address that is not theirs any more stay here', async () => {
  const { desk, server, car, say, said } = await booked()
  await say()
  await agree(desk, car(), [], 'other@example.com')
  await runOutbox(desk)
  expect(server.letters).toHaveLength(0)
  expect(await said()).toMatchObject({ state: 'withdrawn', outcome: expect.stringContaining('another one') })
})

test('Words found still to go in a restored copy wait for the desk, which may send them again', async () => {
  const { desk, server, say, said } = await booked()
  await say()
  await holdReminders(desk, desk.now() - 60)
  await runOutbox(desk)
  expect(server.letters).toHaveLength(0)
  const held = (await said())!
  expect(held).toMatchObject({ state: 'failed', again: true, outcome: expect.stringContaining('Restored') })
  await sendWordsAgain(desk, held)
  await runOutbox(desk)
  expect(await said()).toMatchObject({ state: 'sent', outcome: expect.stringContaining('perhaps twice') })
})

test('Neither the days between two reminders nor the limit of a day hold words about a booking', async () => {
  const { desk, server, say } = await booked()
  await change(desk, { dailyLimit: 1, gapDays: 7 })
  await say()
  await runOutbox(desk)
  await say()
  await runOutbox(desk)
  expect(server.letters).toHaveLength(2)
  const written = { id: 'none', kind: 'ready', subject: 'a', text: 'b', says: noTimes } as const
  expect(() => sendWords(desk, { ...written, text: ' ' })).toThrow('Write what is to be said.')
  expect(() => sendWords(desk, { ...written, subject: ' ' })).toThrow('needs a subject')
})

test('Words can be taken back until they leave; what has left says so', async () => {
  const { desk, server, id, said } = await booked()
  const front = { ...desk, deskId: 'front' }
  const words = {
    id,
    kind: 'confirmation',
    subject: 'Your booking',
    text: 'It is booked.',
    says: noTimes,
  } as const
  await sendWords(front, words)
  await takeBack(front, {})
  expect(await said()).toBeUndefined()
  await sendWords(front, words)
  await runOutbox(desk)
  await expect(takeBack(front, {})).rejects.toThrow(/An e-mail has gone out/)
  expect(server.letters).toHaveLength(1)
})
