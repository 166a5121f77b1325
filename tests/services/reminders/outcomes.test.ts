import { beforeEach, describe, expect, it } from 'vitest'
import { boardRange } from '../../../main/services/board/board.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { approveAll } from '../../../main/services/reminders/messageActs.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { runOutbox } from '../../../main/services/reminders/outboxRun.ts'
import { bookSlot, recordOutcome } from '../../../main/services/reminders/outcomes.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { resultsSummary } from '../../../main/services/reminders/results.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { type MailDesk, mailDesk } from './mailDesk.ts'
import { approvedBatch, change, duePlan } from './reminderDesk.ts'

let server: MailDesk['server']
let desk: MailDesk['desk']
let car: MailDesk['car']
beforeEach(async () => {
  ;({ server, desk, car } = await mailDesk())
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
