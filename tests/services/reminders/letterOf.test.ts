import ICAL from 'ical.js'
import { beforeEach, describe, expect, it } from 'vitest'
import { importBounce } from '../../../main/services/reminders/bounces.ts'
import { withdrawConsent } from '../../../main/services/reminders/consents.ts'
import { sendTest } from '../../../main/services/reminders/messageActs.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { carSold } from '../../../main/services/upkeep/acts.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { type MailDesk, mailDesk } from './mailDesk.ts'
import { approvedBatch, change, duePlan, message } from './reminderDesk.ts'

let server: MailDesk['server']
let desk: MailDesk['desk']
let car: MailDesk['car']
beforeEach(async () => {
  ;({ server, desk, car } = await mailDesk())
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
