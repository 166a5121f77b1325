import ICAL from 'ical.js'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { boardRange } from '../../../main/services/board/board.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { importBounce } from '../../../main/services/reminders/bounces.ts'
import { withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { callList, letterList } from '../../../main/services/reminders/deskLists.ts'
import {
  approveAll,
  approveMessage,
  editMessage,
  refuseMessage,
  sendTest,
  sentByHand,
} from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { bookSlot, recordOutcome } from '../../../main/services/reminders/outcomes.ts'
import { ownerLetter } from '../../../main/services/reminders/ownerLetter.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { resultsSummary } from '../../../main/services/reminders/results.ts'
import { carSold } from '../../../main/services/upkeep/acts.ts'
import { dueVisits } from '../../../main/services/upkeep/visits.ts'
import { startMailServer, type TestMailServer } from '../../outbox/mailServer.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { approvedBatch, change, duePlan, message, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

let server: TestMailServer
let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
beforeEach(async () => {
  server = await startMailServer()
  ;({ desk, shop } = await reminderDesk(server.port))
})
afterEach(async () => {
  await desk.close()
  await server.close()
})

const car = (i = 0) => shop.vehicles[i]!

describe('the morning batch', () => {
  it('writes to owners who agreed, with two real times held, and says why to nobody else', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await duePlan(desk, car(1))
    expect(await prepareBatch(desk)).toMatchObject({
      written: 1,
      notWritten: [{ customerName: 'Toma Birk', why: expect.stringContaining('not agreed') }],
    })
    const { messages, lawNote } = await batch(desk)
    expect(messages).toMatchObject([
      { state: 'draft', channel: 'email', address: 'owner@example.com', unfilled: [], tryNo: 1 },
    ])
    expect(lawNote).toContain('local law')
    const slots = messages[0]!.slots
    expect(slots).toHaveLength(2)
    for (const slot of slots) {
      expect(slot.state).toBe('held')
      // Held to an evening five days on, and free again before it would be needed.
      expect(slot.heldUntilAt).toBeLessThan(slot.dropOffAt)
      expect(messages[0]!.body).toContain(slot.words)
      const job = await getJob(desk, { id: slot.jobId })
      expect(job).toMatchObject({ status: 'held' })
    }
    expect(slots[0]!.handoverAt).toBeLessThanOrEqual(slots[1]!.dropOffAt)
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
  })

  it('is reviewed one by one: one edited, one refused, the rest approved as a whole', async () => {
    for (const i of [0, 1, 2]) {
      await agree(desk, car(i), ['email'], `owner${i}@example.com`)
      await duePlan(desk, car(i))
    }
    await prepareBatch(desk)
    const [first, second, third] = (await batch(desk)).messages
    const edited = await editMessage(desk, {
      ...first!,
      subject: 'Your {{carName}}',
      body: `${first!.body}\nSee you soon, {{ownerName}}.`,
    })
    expect(edited).toMatchObject({ subject: 'Your Marlo Tern', state: 'draft' })
    expect(edited.body).toContain('See you soon, Ines Vale.')
    await expect(editMessage(desk, { ...first!, subject: 'x', body: 'y' })).rejects.toMatchObject({
      code: 'stale',
    })
    await refuseMessage(desk, second!)
    expect(await message(desk, second!.id)).toMatchObject({
      state: 'withdrawn',
      slots: [{ state: 'gone' }, { state: 'gone' }],
    })
    expect(await approveAll(desk)).toMatchObject({ approved: 2, words: [] })
    expect(await runOutbox(desk)).toMatchObject({ sent: 2, failed: 0, waiting: 0 })
    expect(server.letters.map(letter => letter.to[0]).sort()).toEqual(['owner0@example.com', third!.address])
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    expect(server.letters).toHaveLength(2)
  })

  it('approves nothing with a field nobody could fill', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.layer.deleteMany())
    await prepareBatch(desk)
    const [draft] = (await batch(desk)).messages
    expect(draft!.unfilled).toEqual(['lastDate'])
    await expect(approveMessage(desk, draft!)).rejects.toMatchObject({ code: 'unfilled' })
    const body = draft!.body.replace(/ It was last with us on ____\./, '')
    const edited = await editMessage(desk, { ...draft!, body })
    expect(edited.unfilled).toEqual([])
    expect(await approveMessage(desk, edited)).toMatchObject({ state: 'approved' })
  })
})

describe('the mail', () => {
  it('has a plain text, the way out, a stable id and a calendar file that other programs read', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    const [sent] = await approvedBatch(desk)
    await runOutbox(desk)
    const [got] = server.letters
    // RFC 2369 section 3.2.
    expect(got!.headers['list-unsubscribe']).toBe('<mailto:hello@ashdown.example.com?subject=stop>')
    const row = await desk.store.read.message.findFirstOrThrow()
    expect(got!.headers['message-id']).toBe(row.mailId)
    expect(got!.headers['content-type']).toContain('multipart/mixed')
    expect(got!.parts[0]!.type).toBe('text/plain')
    const text = got!.parts[0]!.bytes.toString('utf8')
    for (const slot of sent!.slots) expect(text).toContain(slot.words)
    const file = got!.parts[1]!
    expect(file).toMatchObject({ type: 'text/calendar', name: 'proposed-times.ics' })
    const events = new ICAL.Component(ICAL.parse(file.bytes.toString('utf8')))
      .getAllSubcomponents('vevent')
      .map(each => new ICAL.Event(each))
    expect(events.map(event => event.startDate.toUnixTime() / 60)).toEqual(
      sent!.slots.map(slot => slot.dropOffAt),
    )
    expect(events.map(event => event.endDate.toUnixTime() / 60)).toEqual(
      sent!.slots.map(slot => slot.handoverAt),
    )
  })

  it('goes to the shop itself as a test, and nothing about it changes', async () => {
    await agree(desk, car())
    await duePlan(desk, car())
    const [approved] = await approvedBatch(desk)
    expect(await sendTest(desk, { id: approved!.id })).toMatchObject({ sent: true })
    expect(server.letters).toMatchObject([
      { to: ['hello@ashdown.example.com'], headers: { subject: expect.stringContaining('Test: ') } },
    ])
    expect(await message(desk, approved!.id)).toEqual(approved)
  })

  it('waits for the morning in quiet hours, and for tomorrow when the day is full', async () => {
    await agree(desk, car(), ['email'], 'a@example.com')
    await agree(desk, car(1), ['email'], 'b@example.com')
    for (const i of [0, 1]) await duePlan(desk, car(i))
    await approvedBatch(desk)
    // 22:30 in New York.
    desk.setNow('2026-04-16T02:30:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 0, waiting: 2 })
    // 09:00 in New York; one a day.
    await change(desk, { dailyLimit: 1 })
    desk.setNow('2026-04-16T13:00:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 1, waiting: 1 })
    desk.setNow('2026-04-16T20:00:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    desk.setNow('2026-04-17T13:00:00Z')
    expect(await runOutbox(desk)).toMatchObject({ sent: 1 })
    expect(server.letters.map(letter => letter.to[0])).toEqual(['a@example.com', 'b@example.com'])
  })

  it('is stopped at once by a withdrawal, a sale, and an address that sent mail back', async () => {
    const customers = []
    for (const i of [0, 1, 2]) {
      customers.push(await agree(desk, car(i), ['email'], `owner${i}@example.com`))
      await duePlan(desk, car(i))
    }
    const before = await approvedBatch(desk)
    expect(before.map(each => each.state)).toEqual(['approved', 'approved', 'approved'])
    const said = { channel: 'all', source: 'telephone', wording: 'no more, please' } as const
    expect(await withdrawConsent(desk, { customerId: customers[0]!, ...said })).toEqual({ stopped: 1 })
    await carSold(desk, { vehicleId: car(1) })
    await importBounce(desk, {
      text: 'Final-Recipient: rfc822; Owner2@example.com\nAction: failed\nStatus: 5.1.1\n',
    })
    expect(await runOutbox(desk)).toMatchObject({ sent: 0 })
    expect(server.letters).toEqual([])
    for (const each of before) expect(await message(desk, each.id)).toMatchObject({ state: 'withdrawn' })
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
  })
})

describe('from reminder to booking', () => {
  it('takes one call: the time is on the board, the other is free, the visit is booked', async () => {
    await agree(desk, car())
    const planId = await duePlan(desk, car())
    const [sent] = await approvedBatch(desk)
    await runOutbox(desk)
    desk.setNow('2026-04-16T14:00:00Z')
    const [first, second] = sent!.slots
    expect(await bookSlot(desk, { messageId: sent!.id, slot: 1 })).toMatchObject({ outcome: 'booked' })
    const day = Temporal.Instant.fromEpochMilliseconds(second!.dropOffAt * 60_000)
      .toZonedDateTimeISO('America/New_York')
      .toPlainDate()
      .toString()
    const { stays } = await boardRange(desk, { fromDate: day, days: 1 })
    expect(stays.map(stay => [stay.jobId, stay.status, stay.fromAt])).toContainEqual([
      second!.jobId,
      'booked',
      second!.dropOffAt,
    ])
    expect((await getJob(desk, { id: first!.jobId })).status).toBe('cancelled')
    const { visits } = await dueVisits(desk, { fromDate: '2026-04-01', toDate: '2026-05-30' })
    expect(visits.find(visit => visit.planId === planId)).toMatchObject({
      booking: { jobId: second!.jobId, status: 'booked' },
    })
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
    expect(await resultsSummary(desk)).toMatchObject({
      lines: [{ channel: 'email', reminded: 1, booked: { count: 1, of: 1 }, came: { count: 0, of: 1 } }],
    })
    // The same click again, its answer lost, does no harm.
    expect(await bookSlot(desk, { messageId: sent!.id, slot: 1 })).toMatchObject({ outcome: 'booked' })
  })

  it('goes on after "later", and stops after "no" and after the last try', async () => {
    for (const i of [0, 1, 2]) {
      await agree(desk, car(i), ['email'], `owner${i}@example.com`)
      await duePlan(desk, car(i))
    }
    await change(desk, { maxTries: 2 })
    await approvedBatch(desk)
    await runOutbox(desk)
    const [later, no, silent] = (await batch(desk)).messages
    expect(
      await recordOutcome(desk, { messageId: later!.id, outcome: 'later', laterOn: '2026-05-11' }),
    ).toMatchObject({ nextTryOn: '2026-05-11', slots: [{ state: 'gone' }, { state: 'gone' }] })
    await recordOutcome(desk, { messageId: no!.id, outcome: 'no' })
    // The silent one is written to again after ten days, the other from the day named.
    desk.setNow('2026-04-27T14:00:00Z')
    expect(await prepareBatch(desk)).toMatchObject({ written: 1 })
    expect((await batch(desk)).messages).toMatchObject([{ tryNo: 2, address: silent!.address }])
    await approveAll(desk)
    expect(await runOutbox(desk)).toMatchObject({ sent: 1 })
    desk.setNow('2026-05-11T14:00:00Z')
    expect(await prepareBatch(desk)).toMatchObject({ written: 1 })
    await approveAll(desk)
    await runOutbox(desk)
    desk.setNow('2026-05-26T14:00:00Z')
    expect(await prepareBatch(desk)).toMatchObject({ written: 0 })
    expect(server.letters).toHaveLength(5)
  })
})

describe('by hand', () => {
  it('a letter is printed for the window, posted, and counted once', async () => {
    await agree(desk, car(), ['letter'])
    await duePlan(desk, car())
    const [draft] = await approvedBatch(desk)
    expect(draft).toMatchObject({ channel: 'letter', state: 'approved' })
    const [listed] = await letterList(desk)
    const { bytes, type } = await ownerLetter(desk, { messageId: listed!.id })
    expect(type).toBe('application/pdf')
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-')
    expect(await sentByHand(desk, listed!)).toMatchObject({ state: 'sent' })
    expect(await letterList(desk)).toEqual([])
    await expect(sentByHand(desk, await message(desk, listed!.id))).rejects.toMatchObject({
      code: 'message-state',
    })
  })

  it('a text waits on the list with its link and picture; a call with its script', async () => {
    await agree(desk, car(), ['text'], 'a@example.com')
    await agree(desk, car(1), ['call'], 'b@example.com')
    for (const i of [0, 1]) await duePlan(desk, car(i))
    await approvedBatch(desk)
    const list = await callList(desk)
    const text = list.find(each => each.message.channel === 'text')!
    // RFC 5724 section 2.2: sms:+12125550143?body=... with the body percent-encoded.
    expect(text.sms!.link).toMatch(/^sms:\+12125550143\?body=[^\s"<>]+$/)
    expect(decodeURIComponent(text.sms!.link.split('body=')[1]!)).toBe(text.message.body)
    expect(text.sms!.qr).toMatch(/^data:image\/svg\+xml,/)
    const call = list.find(each => each.message.channel === 'call')!
    expect(call.script).toContain('Toma Birk')
    expect(await recordOutcome(desk, { messageId: call.message.id, outcome: 'unreachable' })).toMatchObject({
      state: 'sent',
      nextTryOn: '2026-04-25',
    })
  })
})
